import { Figure } from '../../parts/Figure.tsx';
import { Panel } from '../../parts/Panel.tsx';
import { reckonerHref } from '../../hrefs.ts';
import { GoLink } from '../GoLink.tsx';
import { useKit } from './kitContext.ts';
import { lensFollows, sensorWidth_m } from './lensFollows.ts';

/** The first camera that says how wide its sensor is, whether or not a shot will use it. */
function sensorOf(cameras: ReturnType<typeof useKit>['open']['shoot']['kit']['cameras']) {
  for (const [id, camera] of Object.entries(cameras)) {
    const imageWidth_m = camera.availability === 'unwanted' ? undefined : sensorWidth_m(camera);
    if (imageWidth_m !== undefined) return { title: camera.title ?? id, imageWidth_m };
  }
  return undefined;
}

/** What follows from a lens as it is written, by the laws that say so. */
export function LensFollows({ lensId }: { readonly lensId: string }) {
  const { open, system, onGo } = useKit();
  const lens = open.shoot.kit.lenses[lensId];
  if (!lens) return null;
  const sensor = sensorOf(open.shoot.kit.cameras);
  const follows = lensFollows({ lens, imageWidth_m: sensor?.imageWidth_m, system });
  return (
    <Panel title="What follows" aside={sensor && `on ${sensor.title}`} className="kit-group kit-follows">
      {follows.length === 0 ? (
        <p className="kit-says">Write a focal length and a close focus, and what follows from them stands here.</p>
      ) : (
        <dl>
          {follows.map(({ id, title, number, unit, says, lawId }) => (
            <div key={id}>
              <dt>
                <GoLink href={reckonerHref({ shootId: open.id, lawId })} onGo={onGo}>
                  {title}
                </GoLink>
              </dt>
              <dd>
                <Figure number={number} unit={unit} />
              </dd>
              <dd className="kit-follows-says">{says}</dd>
            </div>
          ))}
        </dl>
      )}
    </Panel>
  );
}
