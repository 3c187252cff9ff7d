import type { ComponentProps, MouseEvent } from 'react';

export interface GoLinkProps extends Omit<ComponentProps<'a'>, 'onClick'> {
  readonly href: string;
  readonly onGo: (href: string) => void;
}

/** Whether a click on a link is meant to stay in this page. */
const isPlain = ({ button, metaKey, ctrlKey, shiftKey, altKey }: MouseEvent) =>
  button === 0 && !metaKey && !ctrlKey && !shiftKey && !altKey;

/** A link to another place that does not load the page anew, unless it is opened elsewhere. */
export function GoLink({ href, onGo, ...rest }: GoLinkProps) {
  return (
    <a
      {...rest}
      href={href}
      onClick={(event) => {
        if (!isPlain(event)) return;
        event.preventDefault();
        onGo(href);
      }}
    />
  );
}
