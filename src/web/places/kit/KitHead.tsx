import { useId } from 'react';
import { chooseUnits, UNIT_CHOICES, useUnitChoice, type UnitChoice } from '../../state/unitChoice.ts';
import { hireOf, sayMoney } from './hire.ts';
import { useKit } from './kitContext.ts';

function sayHire({ hiredCount, dayPrice, withoutPriceCount }: ReturnType<typeof hireOf>): string {
  if (hiredCount === 0) return 'Nothing to hire.';
  const pieces = hiredCount === 1 ? 'One piece to hire' : `${hiredCount} pieces to hire`;
  if (withoutPriceCount === hiredCount) return `${pieces}, without a price.`;
  const without = withoutPriceCount === 0 ? '' : `; ${withoutPriceCount} without a price`;
  return `${pieces}, ${sayMoney(dayPrice)} a day${without}.`;
}

/** What the kit comes to, and which units it is shown in; it names the page while nothing else does. */
export function KitHead({ isAlone }: { readonly isAlone: boolean }) {
  const { open } = useKit();
  const id = useId();
  const choice = useUnitChoice();
  const hire = hireOf(open.shoot.kit);
  const shootUnits = open.shoot.shoot.units ?? 'metric';
  const labels: Readonly<Record<UnitChoice, string>> = {
    shoot: `as the shoot says: ${shootUnits}`,
    metric: 'metric',
    imperial: 'imperial',
  };
  return (
    <header className="kit-head">
      {isAlone ? <h1>Kit</h1> : <h2>Kit</h2>}
      <p>
        {hire.pieceCount === 0 ? 'Nothing in it yet.' : `${hire.pieceCount} ${hire.pieceCount === 1 ? 'piece' : 'pieces'}.`}{' '}
        {hire.pieceCount > 0 && sayHire(hire)}
      </p>
      <div className="kit-units no-print">
        <label htmlFor={id}>Units shown to you</label>
        <select
          id={id}
          className="field-input"
          value={choice}
          onChange={(event) => chooseUnits(UNIT_CHOICES.find((each) => each === event.currentTarget.value) ?? 'shoot')}
        >
          {UNIT_CHOICES.map((each) => (
            <option key={each} value={each}>
              {labels[each]}
            </option>
          ))}
        </select>
      </div>
    </header>
  );
} // prettier-ignore
