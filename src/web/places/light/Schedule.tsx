import { showNumber } from '../../../base/quantity.ts';
import { lengthWords, sizeWords } from '../shot/pictureWords.ts';
import { letterOf } from './drawn.ts';
import { useLight } from './lightContext.ts';
import { bearingSaid, distanceSaid, doorsSaid, lightSaid, placeSaid } from './lightWords.ts';

const percent = (fraction: number) => `${showNumber(fraction * 100, 3)} %`;

/** Every flag in a table, beneath the lamps. */
function FlagSchedule() {
  const { light, setup, system, view } = useLight();
  if (light.flags.length === 0) return null;
  return (
    <table className="light-schedule">
      <caption>Flag schedule</caption>
      <thead>
        <tr>
          {['', 'Flag', 'Stands', 'From the subject', 'Square to', 'Size', 'Note'].map((head) => (
            <th key={head} scope="col">
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {light.flags.map(({ id, title, isOff }, i) => {
          const { at, faces, flagWidth_m, flagHeight_m, note } = setup.flags[id] ?? {};
          const hasSize = flagWidth_m !== undefined && flagHeight_m !== undefined;
          return (
            <tr key={id}>
              <td>{letterOf(i)}</td>
              <th scope="row">
                {title === id ? `Flag ${letterOf(i)}` : title}
                {isOff && ', taken away'}
              </th>
              <td>{at ? placeSaid(at, system) : 'not written'}</td>
              <td>{at ? `${distanceSaid(at, system)}; ${bearingSaid(at, view.azimuth_deg)}` : ''}</td>
              <td>{faces ? placeSaid(faces, system) : 'the subject'}</td>
              <td>{hasSize ? sizeWords(flagWidth_m, flagHeight_m, system) : 'not written'}</td>
              <td>{note ?? ''}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

/** Every lamp and flag in a table, for paper: who reads it hangs lamps. */
export function Schedule() {
  return (
    <>
      <LampSchedule />
      <FlagSchedule />
    </>
  );
}

function LampSchedule() {
  const { light, setup, open, system, view } = useLight();
  if (light.lamps.length === 0) return null;
  const { kit } = open.shoot;
  return (
    <table className="light-schedule">
      <caption>Lamp schedule</caption>
      <thead>
        <tr>
          {['', 'Lamp', 'Stands', 'From the subject', 'Aimed at', 'Set', 'In front of it', 'Draws', 'Gives', 'Note'].map((head) => (
            <th key={head} scope="col">
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {light.lamps.map(({ id, title, lamp, isOff, illuminance_lx, distance_m, power_W, lacks }, i) => {
          const placed = setup.lamps[id];
          const kitTitle = lamp === undefined ? undefined : (kit.lamps[lamp]?.title ?? lamp);
          const { at, aim, levelFraction, floodFraction, modifiers = [], doors = {}, shareFraction, colourTemperature_K, mainsPhaseCount, note } = placed ?? {};
          const set = [levelFraction === undefined ? 'full' : percent(levelFraction), floodFraction === undefined ? '' : `flood ${percent(floodFraction)}`, colourTemperature_K === undefined ? '' : `${Math.round(colourTemperature_K)} K`, mainsPhaseCount === undefined ? '' : `phase ${mainsPhaseCount}`, shareFraction === undefined ? '' : `${percent(shareFraction)} of the light, as read`].filter(Boolean);
          const before = [...modifiers.map((of) => kit.modifiers[of]?.title ?? of), doorsSaid(doors)].filter(Boolean);
          return (
            <tr key={id}>
              <td>{i + 1}</td>
              <th scope="row">
                {title}
                {kitTitle !== undefined && kitTitle !== title && <span> {kitTitle}</span>}
              </th>
              <td>{at ? placeSaid(at, system) : 'not written'}</td>
              <td>{at ? `${Number.isFinite(distance_m) ? `${lengthWords(distance_m, system)}; ` : ''}${bearingSaid(at, view.azimuth_deg)}` : ''}</td>
              <td>{aim ? placeSaid(aim, system) : 'the subject'}</td>
              <td>{isOff ? 'off' : set.join(', ')}</td>
              <td>{before.join(', ') || 'nothing'}</td>
              <td>{power_W === undefined ? '' : `${showNumber(power_W, 3)} W`}</td>
              <td>{isOff ? '' : lacks.length > 0 ? 'not known' : lightSaid(illuminance_lx, system)}</td>
              <td>{note ?? ''}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
} // prettier-ignore
