import type { OpenShoot } from '../../state/contract.ts';
import { WrittenField } from './WrittenField.tsx';

const FIELDS = [
  ['/shoot/title', 'Title', ''],
  ['/shoot/place', 'Place', 'where it is shot'],
  ['/shoot/day/date', 'Date', '2027-03-09'],
  ['/shoot/day/call', 'Call', '07:30'],
  ['/shoot/day/wrap', 'Wrap', '19:30'],
  ['/shoot/timeZone', 'Time zone', 'Europe/Lisbon'],
  ['/shoot/mains/voltage', 'Mains', '230 V'],
  ['/shoot/mains/frequency', 'Mains frequency', '50 Hz'],
  ['/shoot/units', 'Units', 'metric'],
  ['/shoot/meterConstant', 'Meter constant', '250 lx·s'],
  ['/shoot/air', 'Air on the set', '22 °C'],
] as const;

/** What is said of the shoot as a whole, folded away until it is wanted. */
export function About({ open }: { readonly open: OpenShoot }) {
  return (
    <details className="shoot-about no-print">
      <summary>Title, place, day and mains</summary>
      <div className="shoot-about-fields">
        {FIELDS.map(([path, label, placeholder]) => (
          <WrittenField key={path} open={open} path={path} label={label} placeholder={placeholder} />
        ))}
      </div>
    </details>
  );
}
