import type { LampLack } from '../../../plan/lighting.ts';
import { useLight } from './lightContext.ts';

/** What a lamp or a flag lacks, each leading to where it is written. */
export function LackList({ lacks }: { readonly lacks: readonly LampLack[] }) {
  const { follow } = useLight();
  if (lacks.length === 0) return null;
  return (
    <ul className="light-lacks">
      {lacks.map(({ title, path, isUnread, what }) => (
        <li key={path + title}>
          <button type="button" onClick={() => follow(path)}>
            {title}
          </button>{' '}
          {what ?? (isUnread ? 'is written and cannot be read' : path.startsWith('/kit/') ? 'is not written in the kit' : 'is not written')}
        </li>
      ))}
    </ul>
  );
} // prettier-ignore
