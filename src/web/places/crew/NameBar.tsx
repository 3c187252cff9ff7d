import type { Present } from '../../../api/replies.ts';
import { putNameOff, usePerson } from '../../state/person.ts';
import { NameForm } from './NameForm.tsx';

/** Asks for a name once it matters: when somebody else is on the shoot. It is in nobody's way, and asked once. */
export function NameBar({ others }: { readonly others: readonly Present[] }) {
  const { name, wasAsked } = usePerson();
  if (others.length === 0 || name !== undefined || wasAsked) return null;
  return (
    <aside className="name-bar no-print" aria-label="Your name">
      <NameForm
        says={others.length === 1 ? 'Somebody else is on this shoot too.' : `${others.length} others are on this shoot too.`}
        onLater={putNameOff}
      />
    </aside>
  );
} // prettier-ignore
