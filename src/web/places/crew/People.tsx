import { useState } from 'react';
import type { Present } from '../../../api/replies.ts';
import { Button } from '../../parts/Button.tsx';
import { Icon } from '../../parts/Icon.tsx';
import { Menu } from '../../parts/Menu.tsx';
import type { OpenShoot } from '../../state/contract.ts';
import { client } from '../../state/page.ts';
import { usePerson } from '../../state/person.ts';
import { initialsOf, sayWho, upperFirst } from '../../state/who.ts';
import { NameSheet } from './NameSheet.tsx';
import { hrefOfPresent, sayPlace, sayPresent } from './where.ts';

export interface PeopleProps {
  readonly open: OpenShoot;
  readonly others: readonly Present[];
  readonly onGo: (href: string) => void;
}

/** As many as there is room for; the rest are counted. */
const MOST_SHOWN = 3;

/** Who else is on this shoot and where; choosing somebody goes to where they are, and oneself says one's name. */
export function People({ open, others, onGo }: PeopleProps) {
  const { name } = usePerson();
  const [isNaming, setNaming] = useState(false);
  const words = others.map((present) => sayPresent(present, open.written, client));
  const says = words.length === 0 ? 'People: nobody else is here' : `People: ${words.join('; ')}`;
  return (
    <>
      <Menu
        align="end"
        trigger={
          <Button look="sign" className="people" aria-label={says} title={words.length === 0 ? says : words.join('\n')}>
            {others.length === 0 && <Icon name="person" />}
            {others.slice(0, MOST_SHOWN).map((present) => (
              <span key={present.who} className="people-initials">
                {initialsOf(present)}
              </span>
            ))}
            {others.length > MOST_SHOWN && <span className="people-more">+{others.length - MOST_SHOWN}</span>}
          </Button>
        }
        items={[
          ...others.map((present) => ({
            id: present.who,
            label: upperFirst(sayWho(present, client)),
            note: sayPlace(present, open.written),
          })),
          {
            id: '',
            label: name ?? 'Say your name',
            note: name === undefined ? 'you: others see it' : 'you: change it',
          },
        ]}
        onChoose={(who) => {
          const present = others.find((each) => each.who === who);
          if (present) onGo(hrefOfPresent(present, open.id));
          else setNaming(true);
        }}
      />
      <NameSheet isOpen={isNaming} onClose={() => setNaming(false)} />
    </>
  );
}
