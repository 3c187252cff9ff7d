import { useEffect, useRef, type KeyboardEvent } from 'react';
import { SUBJECTS } from '../../../laws/catalogue.ts';
import type { AnyLaw } from '../../../laws/law.ts';
import { Button } from '../../parts/Button.tsx';
import { GoLink } from '../GoLink.tsx';
import { findLaws, meantBy, WORDS_TO_TRY } from './find.ts';

export interface LawListProps {
  readonly search: string;
  readonly onSearch: (search: string) => void;
  readonly lawId: string | undefined;
  readonly hrefOf: (lawId: string) => string;
  readonly onGo: (href: string) => void;
}

interface LawLinkProps extends Pick<LawListProps, 'lawId' | 'hrefOf' | 'onGo'> {
  /** Reached by arrow keys from the one link that Tab stops at. */
  readonly isPassed: boolean;
  readonly law: AnyLaw;
  /** Said with it where laws of several subjects stand together. */
  readonly subject?: string;
}

function LawLink({ law, subject, isPassed, lawId, hrefOf, onGo }: LawLinkProps) {
  return (
    <li>
      <GoLink
        className="law-link"
        {...(isPassed ? { tabIndex: -1 } : {})}
        href={hrefOf(law.id)}
        onGo={onGo}
        aria-current={law.id === lawId ? 'page' : undefined}
      >
        <span className="law-link-title">{law.title}</span>
        {subject !== undefined && <span className="law-link-subject">{subject}</span>}
      </GoLink>
    </li>
  );
}

function NothingFound({ search, onSearch }: Pick<LawListProps, 'search' | 'onSearch'>) {
  const meant = meantBy(search);
  return (
    <div className="laws-none">
      <p role="status">No law speaks of “{search.trim()}”.</p>
      {meant !== undefined && (
        <p>
          Did you mean{' '}
          <Button look="quiet" className="laws-meant" onClick={() => onSearch(meant)}>
            {meant}
          </Button>
        </p>
      )}
      <p>A law is found by its name, by what it takes or gives, and by words of the trade. Try one of these:</p>
      <div className="laws-try">
        {WORDS_TO_TRY.map((word) => (
          <Button key={word} onClick={() => onSearch(word)}>
            {word}
          </Button>
        ))}
      </div>
    </div>
  );
}

/** Every law by subject, or those that a search finds; arrows go from one to the next. */
export function LawList({ search, onSearch, ...rest }: LawListProps) {
  const list = useRef<HTMLElement>(null);
  useEffect(() => {
    // The list scrolls by itself: the law that is open stays in sight in it, and the page stays where it is.
    const box = list.current?.parentElement;
    const link = box?.querySelector<HTMLElement>('.law-link[aria-current]');
    if (!box || !link || box.scrollHeight <= box.clientHeight) return;
    const { top, bottom } = link.getBoundingClientRect();
    const around = box.getBoundingClientRect();
    if (top < around.top + 100 || bottom > around.bottom) box.scrollTop += top - around.top - box.clientHeight / 2;
  }, [rest.lawId]);
  const isSearch = search.trim() !== '';
  const found = findLaws(search);
  // Beside an open law the list is one stop of the Tab key, not a hundred on the way to the form.
  const stop = found.some(({ law }) => law.id === rest.lawId) ? rest.lawId : found[0]?.law.id;
  const isPassed = (law: AnyLaw) => rest.lawId !== undefined && law.id !== stop;

  const onKeyDown = (event: KeyboardEvent) => {
    const links = [...(list.current?.querySelectorAll<HTMLElement>('.law-link') ?? [])];
    const at = links.indexOf(document.activeElement as HTMLElement);
    const by = { ArrowDown: 1, ArrowUp: -1 }[event.key];
    if (by !== undefined && (at >= 0 || by > 0)) {
      event.preventDefault();
      if (at + by < 0) list.current?.querySelector('input')?.focus();
      else links[Math.min(links.length - 1, at + by)]?.focus();
    } else if (
      event.key === 'Enter' &&
      at < 0 &&
      isSearch &&
      found[0] &&
      (event.target as HTMLElement).tagName === 'INPUT'
    ) {
      event.preventDefault();
      rest.onGo(rest.hrefOf(found[0].law.id));
    } else if (event.key === 'Escape' && isSearch && at < 0) {
      onSearch('');
    }
  };

  return (
    <nav className="laws" aria-label="Laws" ref={list} onKeyDown={onKeyDown}>
      <div className="laws-find">
        <label htmlFor="find-law">Find a law</label>
        <input
          id="find-law"
          type="search"
          value={search}
          placeholder="depth, lux, buffer"
          autoComplete="off"
          spellCheck={false}
          onChange={(event) => onSearch(event.currentTarget.value)}
        />
      </div>
      {isSearch ? (
        found.length === 0 ? (
          <NothingFound search={search} onSearch={onSearch} />
        ) : (
          <>
            <p className="laws-count" role="status">
              {found.length === 1 ? 'One law' : `${found.length} laws`}
            </p>
            <ul className="laws-found">
              {found.map(({ law, subject }) => (
                <LawLink key={law.id} law={law} subject={subject} isPassed={isPassed(law)} {...rest} />
              ))}
            </ul>
          </>
        )
      ) : (
        <div className="laws-subjects">
          {SUBJECTS.map(({ title, laws }) => (
            <section key={title} className="laws-subject" aria-label={title}>
              <h2>{title}</h2>
              <ul>
                {laws.map((law) => (
                  <LawLink key={law.id} law={law} isPassed={isPassed(law)} {...rest} />
                ))}
              </ul>
            </section>
          ))}
        </div>
      )}
    </nav>
  );
}
