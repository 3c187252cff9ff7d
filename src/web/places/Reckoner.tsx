import { useEffect, useState } from 'react';
import { nearestName } from '../../base/nearest.ts';
import type { UnitSystem } from '../../base/quantity.ts';
import { CATALOGUE, lawNamed } from '../../laws/catalogue.ts';
import { Button } from '../parts/Button.tsx';
import { Icon } from '../parts/Icon.tsx';
import { writeSearch } from '../searchText.ts';
import { GoLink } from './GoLink.tsx';
import { LawList } from './reckoner/LawList.tsx';
import { LawSheet } from './reckoner/LawSheet.tsx';
import { chooseUnits, useUnits } from '../state/unitChoice.ts';
import './reckoner/reckoner.css';
import './reckoner/pictures.css';

export interface ReckonerProps {
  /** The law in the address, where one is. */
  readonly lawId: string | undefined;
  readonly search: Readonly<Record<string, string>>;
  /** The units of the open shoot, where one is open. */
  readonly shootUnits: UnitSystem | undefined;
  readonly hrefOf: (lawId?: string) => string;
  readonly onGo: (href: string) => void;
  /** Goes to an address of the same law, and stays where the page is scrolled to. */
  readonly onAddress: (href: string) => void;
}

function NoSuchLaw({ lawId, hrefOf, onGo }: Pick<ReckonerProps, 'hrefOf' | 'onGo'> & { readonly lawId: string }) {
  const near = lawNamed(
    nearestName(
      lawId,
      CATALOGUE.map(({ id }) => id),
    ) ?? '',
  );
  return (
    <div className="law-unknown">
      <h1>No such law</h1>
      <p>
        “{lawId}” is not in the catalogue. {near ? 'The nearest by name:' : 'The list has every law.'}
      </p>
      {near && <Button onClick={() => onGo(hrefOf(near.id))}>{near.title}</Button>}
    </div>
  );
}

/** Every law as a form: found by words of the trade, worked out at each keystroke, drawn over one input and over two. */
export function Reckoner({ lawId, search, shootUnits, hrefOf, onGo, onAddress }: ReckonerProps) {
  const [words, setWords] = useState('');
  const usual = useUnits(shootUnits);
  const law = lawId === undefined ? undefined : lawNamed(lawId);
  useEffect(() => {
    if (!law) document.title = 'Reckoner, Longsecond';
  }, [law]);
  // Units chosen in the address go along to the next law.
  const units = search['units'] === undefined ? '' : writeSearch({ units: search['units'] });
  const list = (
    <LawList search={words} onSearch={setWords} lawId={lawId} hrefOf={(id) => hrefOf(id) + units} onGo={onGo} />
  );
  if (lawId === undefined)
    return (
      <div className="reckoner is-index">
        <header className="reckoner-head">
          <h1>Reckoner</h1>
          <p>{CATALOGUE.length} laws to work one number out by, each with its sources.</p>
        </header>
        {list}
      </div>
    );
  return (
    <div className="reckoner">
      <div className="reckoner-list no-print">{list}</div>
      <div className="reckoner-law">
        <GoLink className="reckoner-back no-print" href={hrefOf() + units} onGo={onGo}>
          <Icon name="back" /> All laws
        </GoLink>
        {law ? (
          <LawSheet
            key={law.id}
            law={law}
            search={search}
            usual={usual}
            onUnits={chooseUnits}
            onAddress={(pairs) => onAddress(hrefOf(law.id) + writeSearch(pairs))}
          />
        ) : (
          <NoSuchLaw lawId={lawId} hrefOf={hrefOf} onGo={onGo} />
        )}
      </div>
    </div>
  );
}
