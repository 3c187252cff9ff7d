import type { ComponentProps } from 'react';
import { isPlainClick } from '../parts/pointer.ts';

export interface GoLinkProps extends Omit<ComponentProps<'a'>, 'onClick'> {
  readonly href: string;
  readonly onGo: (href: string) => void;
}

/** A link to another place that does not load the page anew, unless it is opened elsewhere. */
export function GoLink({ href, onGo, ...rest }: GoLinkProps) {
  return (
    <a
      {...rest}
      href={href}
      onClick={(event) => {
        if (!isPlainClick(event)) return;
        event.preventDefault();
        onGo(href);
      }}
    />
  );
}
