import { useMemo } from 'react';
import { Panel } from '../../parts/Panel.tsx';
import { StateWord } from '../../parts/StateWord.tsx';
import { lengthWords, sizeWords } from '../shot/pictureWords.ts';
import { behindOf, evennessOf, keyRatioOf, sizeOf } from './findings.ts';
import { stopsOver, useLight } from './lightContext.ts';
import { bothLights, edgesSaid, lightSaid, luminanceSaid, ratioSaid, stopsSaid } from './lightWords.ts';

/** The face that a lit-through shot looks at: how bright, and whether it fills the frame. */
function Behind() {
  const { shot, burning, view, system, light } = useLight();
  const crop = shot?.plan.picture?.crops[0];
  const lens_m = shot?.plan.settings?.workingDistance_m;
  const behind = useMemo(
    () =>
      crop && lens_m !== undefined && lens_m > 0
        ? behindOf({ sources: burning, view, frame: { width_m: crop.width_m, height_m: crop.height_m }, lensToSubject_m: lens_m })
        : undefined,
    [burning, view, crop, lens_m],
  );
  if (shot?.shot.seen !== 'lit-through') return null;
  const need = shot.margin?.kind === 'luminance' ? shot.margin.need : undefined;
  const seen = behind?.luminance_cd_per_m2 ?? light.luminance?.luminance_cd_per_m2;
  const by = light.lamps.findIndex(({ source }) => source !== undefined && source === behind?.face);
  const size = behind && sizeOf(behind.face);
  return (
    <div className="light-finding is-wide">
      <dt>Behind the subject</dt>
      <dd>
        {seen === undefined ? (
          'No glowing face lies behind the subject as this shot sees it: put one there, aimed at the subject.'
        ) : (
          <>
            <b>{luminanceSaid(seen, system)}</b>
            {need !== undefined && <span> {stopsSaid(Math.log2(seen / need))} on {luminanceSaid(need, system)}</span>}
          </>
        )}
      </dd>
      {behind && (
        <dd className="light-finding-says">
          {behind.missing.length === 0 ? (
            <StateWord standing="spare" word={`Lamp ${by + 1} fills the frame.`} />
          ) : (
            <StateWord standing="short" word={`Lamp ${by + 1} does not fill the frame ${edgesSaid(behind.missing)}.`} />
          )}{' '}
          Seen from the lens, the frame is {sizeWords(behind.needed.width_m, behind.needed.height_m, system)} at the face, {lengthWords(behind.lensToFace_m, system)} from the lens
          {size && <>; the face is {sizeWords(size.width_m, size.height_m, system)}</>}.
        </dd>
      )}
    </div>
  );
} // prettier-ignore

/** The light at the subject, how even it is, and how key stands to fill. */
export function Findings() {
  const { light, burning, only, shot, view, facing, facingSaid, reference, system } = useLight();
  const crop = shot?.plan.picture?.crops[0];
  const evenness = useMemo(
    () => crop && evennessOf({ sources: burning, view, facing, frame: { width_m: crop.width_m, height_m: crop.height_m } }),
    [burning, view, facing, crop],
  );
  const key = keyRatioOf(light.lamps);
  const alone = only === undefined ? undefined : light.lamps.find(({ id }) => id === only);
  const total_lx = alone ? alone.illuminance_lx : light.illuminance_lx;
  const spread_lx = alone ? alone.illuminance_lx * alone.spreadFraction : light.spread_lx;
  const stops = stopsOver(total_lx, reference);
  const keyNumber = key ? light.lamps.findIndex(({ id }) => id === key.key) + 1 : 0;
  return (
    <Panel title={alone ? 'At the subject, this lamp alone' : 'At the subject'} aside={`facing ${facingSaid}`} className="light-findings">
      <dl>
        <Behind />
        <div className="light-finding is-wide">
          <dt className="hidden-text">Light</dt>
          <dd>
            {Number.isNaN(total_lx) ? (
              <b className="light-unknown">not known: a lamp lacks something</b>
            ) : (
              <>
                <b className={total_lx > 0 ? 'light-total' : 'light-unknown'}>{total_lx > 0 ? lightSaid(total_lx, system) : `no light falls on the side that faces ${facingSaid}`}</b>
                {reference?.isNeed && stops !== undefined && <span className={stops < 0 ? 'is-short' : undefined}> {stopsSaid(stops)}</span>}
              </>
            )}
          </dd>
          {total_lx > 0 && (
            <dd className="light-finding-says">
              {bothLights(total_lx)}, give or take {Math.round((spread_lx / total_lx) * 100)} %
              {reference?.isNeed ? `; ${lightSaid(reference.value_lx, system)} needed` : ''}
            </dd>
          )}
        </div>
        <div className="light-finding">
          <dt>Across the frame</dt>
          <dd>
            {evenness ? <b>{Number.isFinite(evenness.spread_stops) ? `${evenness.spread_stops.toFixed(1)} stops` : 'dark at an edge'}</b> : '–'}
          </dd>
          <dd className="light-finding-says">
            {evenness ? `${lightSaid(evenness.darkest_lx, system)} to ${lightSaid(evenness.brightest_lx, system)}` : crop ? 'no light there' : 'needs a frame width'}
          </dd>
        </div>
        <div className="light-finding">
          <dt>Key to fill</dt>
          <dd>{key ? <b>{Number.isFinite(key.ratio) ? ratioSaid(key) : 'no fill'}</b> : '–'}</dd>
          <dd className="light-finding-says">
            {key && (Number.isFinite(key.stops) ? `lamp ${keyNumber} against the rest, ${key.stops.toFixed(1).replace(/^-0\.0$/, '0.0').replace('-', '−')} stops` : `lamp ${keyNumber} alone`)}
          </dd>
        </div>
      </dl>
    </Panel>
  );
} // prettier-ignore
