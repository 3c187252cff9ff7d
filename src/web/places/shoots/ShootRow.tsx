import type { ShootEntry, Standing } from '../../../api/replies.ts';
import { exportPath } from '../../../api/routes.ts';
import { Button } from '../../parts/Button.tsx';
import { Icon } from '../../parts/Icon.tsx';
import { Menu } from '../../parts/Menu.tsx';
import { shootHref } from '../../hrefs.ts';
import { GoLink } from '../GoLink.tsx';

export interface ShootRowProps {
  readonly shoot: ShootEntry;
  readonly onGo: (href: string) => void;
  readonly onDuplicate: () => void;
  readonly onStanding: (standing: Standing) => void;
}

const WHEN = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'short' });

const EXPORTS = {
  yaml: ['YAML', 'as it is written'],
  json: ['JSON', 'for programs'],
  zip: ['zip', 'with its files'],
} as const;

type ExportAs = keyof typeof EXPORTS;

/** What a shoot can become, from what it is. */
const MOVES: Readonly<
  Record<Standing, readonly { readonly to: Standing; readonly label: string; readonly note: string }[]>
> = {
  current: [
    { to: 'template', label: 'Make it a template', note: 'others begin from it' },
    { to: 'archived', label: 'Archive', note: 'kept, out of the way' },
  ],
  template: [
    { to: 'current', label: 'Make it a current shoot', note: '' },
    { to: 'archived', label: 'Archive', note: 'kept, out of the way' },
  ],
  archived: [{ to: 'current', label: 'Bring back', note: 'to the current shoots' }],
};

/** Downloads what an address of the server gives, under the name that the server says. */
function download(href: string): void {
  const link = document.createElement('a');
  link.href = href;
  link.download = '';
  link.click();
}

/** One shoot of the list: the way into it, and all that can be done with it as a whole. */
export function ShootRow({ shoot, onGo, onDuplicate, onStanding }: ShootRowProps) {
  const { id, title, updated, revision, standing } = shoot;
  const isTemplate = standing === 'template';
  const choose = (chosen: string) => {
    const [what, to = ''] = chosen.split(' ');
    if (what === 'open') onGo(shootHref(id));
    else if (what === 'duplicate') onDuplicate();
    else if (what === 'export') download(exportPath(id, to as ExportAs));
    else onStanding(to as Standing);
  };
  return (
    <li className="shoots-row">
      <GoLink className="shoots-open" href={shootHref(id)} onGo={onGo}>
        <span className="shoots-title">{title}</span>
        <span className="shoots-when">
          {revision === 0 ? 'as brought in' : `revision ${revision}`}, {WHEN.format(new Date(updated))}
        </span>
      </GoLink>
      {isTemplate && (
        <Button look="plain" className="shoots-begin" onClick={onDuplicate} aria-label={`Begin from ${title}`}>
          Begin from it
        </Button>
      )}
      <Menu
        align="end"
        trigger={
          <Button look="sign" aria-label={`More for ${title}`}>
            <Icon name="more" />
          </Button>
        }
        items={[
          { id: 'open', label: 'Open' },
          { id: 'duplicate', label: isTemplate ? 'Begin from it…' : 'Duplicate…' },
          ...MOVES[standing].map(({ to, label, note }) => ({ id: `standing ${to}`, label, ...(note === '' ? {} : { note }) })),
          ...(Object.keys(EXPORTS) as ExportAs[]).map((as) => ({ id: `export ${as}`, label: `Export as ${EXPORTS[as][0]}`, note: EXPORTS[as][1] })),
        ]}
        onChoose={choose}
      />
    </li>
  );
} // prettier-ignore
