import type { UnitSystem } from '../../../base/quantity.ts';

export interface UnitSwitchProps {
  readonly system: UnitSystem;
  readonly onChoose: (system: UnitSystem) => void;
}

const SYSTEMS = ['metric', 'imperial'] as const;

/** Which units results and pictures are shown in; any may be typed. */
export function UnitSwitch({ system, onChoose }: UnitSwitchProps) {
  return (
    <fieldset className="unit-switch no-print">
      <legend className="hidden-text">Units shown</legend>
      {SYSTEMS.map((each) => (
        <label key={each}>
          <input type="radio" name="units" value={each} checked={each === system} onChange={() => onChoose(each)} />
          <span>{each}</span>
        </label>
      ))}
    </fieldset>
  );
}
