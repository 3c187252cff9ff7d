/** The production part of a morning sheet: the day, the shots, what is to be settled before it, and what is hired. */
import { showNumber } from '../../base/quantity.ts';
import { DUTIES, type Shoot } from '../../document/schema.ts';
import { worstOf, sayMargin } from './bars.ts';
import { sayFilm } from './boardFrames.ts';
import { shortfalls, totalFigures } from './planSheet.ts';
import { cell, NOT_KNOWN, sayNumber, sayShots, strong, titleOf } from './say.ts';
import { effectiveShot, takesOf } from './shotWords.ts';
import { heading, paragraph, subheading, unlessEmpty, type Block, type Cell, type Source, type TableBlock } from './sheet.ts'; // prettier-ignore

interface Hired {
  readonly section: string;
  readonly id: string;
  readonly title: string;
  readonly dayPrice: number | undefined;
  readonly note: string | undefined;
}

/** What every piece of kit says that matters here. */
interface Item {
  readonly title?: string;
  readonly availability?: string;
  readonly dayPrice?: number;
  readonly note?: string;
}

function hiredKit({ kit }: Shoot): readonly Hired[] {
  const { unread: _unread, ...sections } = kit;
  return Object.entries<Readonly<Record<string, Item>>>(sections).flatMap(([section, items]) =>
    Object.entries(items).flatMap(([id, { title, availability, dayPrice, note }]) =>
      availability === 'hire' ? [{ section, id, title: title ?? id, dayPrice, note }] : [],
    ),
  );
}

/** The shots that name or are answered with a piece of kit. */
function shotsWith({ shoot, plan }: Source, { section, id }: Hired) {
  return plan.shots.filter((shot) => {
    const own = effectiveShot(shoot, shot);
    const named: Readonly<Record<string, readonly (string | undefined)[]>> = {
      cameras: [shot.settings?.camera, own.camera],
      lenses: [shot.settings?.lens, own.lens],
      attachments: own.attachments,
      rigs: own.rigs,
      products: [own.hero.product],
    };
    return named[section]?.includes(id) === true;
  });
}

function hireTable(source: Source): readonly Block[] {
  const hired = hiredKit(source.shoot).map((item) => ({ item, shots: shotsWith(source, item) }));
  if (hired.length === 0) return [paragraph('Nothing in the kit has to be hired.')];
  const asked = hired.filter(({ shots }) => shots.length > 0);
  const price = (amount: number | undefined) => (amount === undefined ? 'no price written' : `${showNumber(amount, 6)} a day`);
  const known = asked.flatMap(({ item }) => (item.dayPrice === undefined ? [] : [item.dayPrice]));
  const open = asked.length - known.length;
  const table: TableBlock = {
    block: 'table',
    name: 'Kit that can be hired',
    columns: [
      { title: 'Kit', align: 'left' },
      { title: 'For', align: 'left' },
      { title: 'Price', align: 'right' },
    ],
    rows: hired.map(({ item, shots }): readonly Cell[] => [
      strong(item.title, item.note),
      cell(shots.length === 0 ? 'no shot as planned' : sayShots(shots)),
      cell(price(item.dayPrice)),
    ]),
    ...(known.length === 0 ? {} : { total: [strong('What shots are planned with'), cell(open === 0 ? '' : `${open} without a price left out`), strong(price(known.reduce((sum, amount) => sum + amount, 0)))] }),
  };
  return [table];
} // prettier-ignore

function shotRow(source: Source, shotPlan: Source['plan']['shots'][number]): readonly Cell[] {
  const { plannedCount, keptCount } = takesOf(source.shoot, shotPlan);
  const worst = worstOf(shotPlan.margins);
  return [
    strong(String(shotPlan.number)),
    strong(shotPlan.title),
    cell(sayNumber(source, 'screenTime_s', shotPlan.clocks?.screenTime_s)),
    cell(`${plannedCount}, keep ${keptCount}`),
    worst ? { ...cell(sayMargin(worst)), state: worst.state } : cell(NOT_KNOWN),
  ];
}

function crewTable({ crew }: Shoot): readonly Block[] {
  const people = Object.entries(crew);
  return people.length === 0
    ? []
    : [
        subheading('Who is here'),
        {
          block: 'table',
          name: 'Crew',
          columns: [
            { title: 'Person', align: 'left' },
            { title: 'Looks after', align: 'left' },
          ],
          rows: people.map(([id, person]) => [
            strong(titleOf(person, id), person.note),
            cell(person.does.length === 0 ? 'nothing written' : person.does.map((duty) => DUTIES[duty]).join('; ')),
          ]),
        },
      ];
}

export function productionPart(source: Source): readonly Block[] {
  const { plan, shoot } = source;
  return [
    { block: 'figures', size: 'small', figures: totalFigures(source) },
    {
      block: 'table',
      name: 'Shots',
      columns: [
        { title: '', align: 'right' },
        { title: 'Shot', align: 'left' },
        { title: 'On screen', align: 'right' },
        { title: 'Takes', align: 'right' },
        { title: 'Worst limit', align: 'left' },
      ],
      rows: plan.shots.map((shot) => shotRow(source, shot)),
    },
    ...unlessEmpty(Object.keys(shoot.board), paragraph(sayFilm(source))),
    heading('To settle before the day', 'what is short as planned'),
    ...shortfalls(source),
    subheading('Hired'),
    ...hireTable(source),
    ...crewTable(shoot),
  ];
}
