import type { ComponentProps } from 'react';
import './button.css';

export interface ButtonProps extends ComponentProps<'button'> {
  /** `plain` has an edge; `quiet` is words alone; `main` is the one thing to do here; `sign` holds a drawn sign. */
  readonly look?: 'plain' | 'quiet' | 'main' | 'sign';
}

/** A button at least a wet finger wide. */
export function Button({ look = 'plain', className, type = 'button', ...rest }: ButtonProps) {
  return <button {...rest} type={type} className={['button', look, className].filter(Boolean).join(' ')} />;
}
