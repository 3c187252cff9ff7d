import { pointerTo } from '../../../document/pointer.ts';
import { Button } from '../../parts/Button.tsx';
import { EmptyPlace } from '../../parts/EmptyPlace.tsx';
import { Panel } from '../../parts/Panel.tsx';
import { CameraFormats } from './CameraFormats.tsx';
import { duplicateItem, itemAt, itemPath, itemsOf, sayUses, titleOf, usesOf } from './kitEdits.ts';
import { fieldsOf, labelOf, type KitKind } from './kinds.ts';
import { useKit } from './kitContext.ts';
import { TakeCare } from './TakeCare.tsx';
import { KitChoice } from './KitChoice.tsx';
import { KitField } from './KitField.tsx';
import { LampLight } from './LampLight.tsx';
import { LampPhotometry } from './LampPhotometry.tsx';
import { LensFollows } from './LensFollows.tsx';
import { NewerThere } from './NewerThere.tsx';
import { OtherKeys } from './OtherKeys.tsx';

export interface ItemFormProps {
  readonly kind: KitKind;
  readonly itemId: string;
}

/** One piece of kit: everything that can be written about it, and what follows from that. */
export function ItemForm({ kind, itemId }: ItemFormProps) {
  const { open, hrefOf, onGo, edit, onMade, onRemove } = useKit();
  const isThere = itemsOf(open.written, kind.key).some(([id]) => id === itemId);
  if (!isThere)
    return (
      <EmptyPlace title={`No such ${kind.one}`} says="It may have been taken out. The list has every piece there is.">
        <Button onClick={() => onGo(hrefOf(kind.key))}>{kind.title}</Button>
      </EmptyPlace>
    );
  const path = itemPath(kind.key, itemId);
  const item = itemAt(open.written, kind.key, itemId);
  const title = titleOf(itemId, item);
  const uses = usesOf(open.written, kind.key, itemId);
  const fields = fieldsOf(kind.key);
  const availability = fields['availability'];
  return (
    <article className="kit-form" aria-labelledby="kit-title">
      <header className="kit-form-head">
        <div>
          <h1 id="kit-title">{title}</h1>
          <p>{uses.length === 0 ? 'Nothing refers to it.' : `In use: ${sayUses(uses)}.`}</p>
        </div>
        <div className="kit-form-tools no-print">
          <Button
            onClick={() => {
              const copy = duplicateItem(open.written, kind, itemId);
              edit(copy.patch, `${title} duplicated`);
              onMade(kind, copy.id);
            }}
          >
            Duplicate
          </Button>
          <Button onClick={() => onRemove({ path, title, uses, thenTo: hrefOf(kind.key) })}>Take out</Button>
        </div>
      </header>
      <TakeCare kind={kind} />
      <NewerThere kind={kind} itemId={itemId} />
      <div className="kit-groups">
        <Panel title="This piece" className="kit-group">
          <KitField path={`${path}/title`} label="Title" placeholder={itemId} />
          {availability?.of.shape === 'choice' && (
            <KitChoice path={`${path}/availability`} label="Availability" says={availability.says} words={Object.entries(availability.of.words)} unsaid="not said, so here" />
          )}
          {fields['dayPrice'] && <KitField path={`${path}/dayPrice`} label="Day price" />}
        </Panel>
        {kind.groups.map((group) => (
          <Panel key={group.title} title={group.title} className="kit-group">
            {group.keys.map((key) => (
              <KitField key={key} path={path + pointerTo([key])} label={labelOf(key)} />
            ))}
          </Panel>
        ))}
        {kind.key === 'lenses' && <LensFollows lensId={itemId} />}
      </div>
      {kind.key === 'cameras' && <CameraFormats cameraId={itemId} />}
      {kind.key === 'lamps' && <LampPhotometry lampId={itemId} />}
      {kind.key === 'lamps' && <LampLight lampId={itemId} />}
      <Panel title="Notes" className="kit-notes">
        <KitField path={`${path}/note`} label="Note" />
        <KitField path={`${path}/origin`} label="Copied from" placeholder="entered here" />
        <OtherKeys path={path} item={item} known={fields} />
      </Panel>
    </article>
  );
} // prettier-ignore
