import type { Fault } from '../../../base/fault.ts';
import { Button } from '../../parts/Button.tsx';

export interface RefusedProps {
  readonly fault: Fault;
  readonly onDismiss: () => void;
}

/** Why a shoot was not taken: what was found, where, and what to do about it. Nothing of it was stored. */
export function Refused({ fault: { what, where, mend }, onDismiss }: RefusedProps) {
  return (
    <section className="shoots-refused" role="alert">
      <h2>Not brought in</h2>
      <p>{what}</p>
      <p className="shoots-where">{where}</p>
      <p>{mend}</p>
      <Button onClick={onDismiss}>Put this away</Button>
    </section>
  );
}
