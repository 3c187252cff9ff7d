import { showNumber } from '../../../base/quantity.ts';
import { lengthWords } from '../shot/pictureWords.ts';
import { useLight } from './lightContext.ts';
import { bearingSaid, lightSaid, placeSaid } from './lightWords.ts';

const percent = (fraction: number) => `${showNumber(fraction * 100, 3)} %`;

/** Every lamp in a table, for paper: who reads it hangs lamps. */
export function Schedule() {
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
          const { at, aim, levelFraction, floodFraction, modifiers = [], note } = placed ?? {};
          const set = [levelFraction === undefined ? 'full' : percent(levelFraction), floodFraction === undefined ? '' : `flood ${percent(floodFraction)}`].filter(Boolean);
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
              <td>{modifiers.map((of) => kit.modifiers[of]?.title ?? of).join(', ') || 'nothing'}</td>
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
