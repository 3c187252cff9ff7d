/** Which address shows which place. */
import {
  createRootRoute,
  createRoute,
  createRouter,
  lazyRouteComponent,
  Outlet,
  useMatches,
  useNavigate,
  useParams,
  useRouter,
  useSearch,
} from '@tanstack/react-router';
import { Suspense, useEffect } from 'react';
import { EmptyPlace } from './parts/EmptyPlace.tsx';
import { Button } from './parts/Button.tsx';
import { Shell } from './parts/Shell.tsx';
import { kitHref, lightHref, kitHrefAt, paperHref, reckonerHref, SHOOTS_HREF, shootHref, shotHref } from './hrefs.ts';
import { Home } from './places/Home.tsx';
import { ReckonerFrame } from './places/ReckonerFrame.tsx';
import { Shoot } from './places/Shoot.tsx';
import { ShootFrame, type ShootPlace } from './places/ShootFrame.tsx';
import { readSearch, writeSearch } from './searchText.ts';
import type { OpenShoot } from './state/contract.ts';
import { useOpenShoot } from './state/hooks.ts';

/** Goes to an address of ours without loading the page anew; going to where one is leaves no step behind. */
function useGo(): (href: string) => void {
  const { history } = useRouter();
  return (href) => {
    if (href !== history.location.href) history.push(href);
  };
}

function NotFound() {
  const go = useGo();
  return (
    <Shell
      places={[
        { label: 'All shoots', href: SHOOTS_HREF, isCurrent: false },
        { label: 'Reckoner', href: reckonerHref(), isCurrent: false },
      ]}
      onGo={go}
    >
      <EmptyPlace title="No such page" says="The address may be mistyped. Every shoot is in the list.">
        <Button onClick={() => go(SHOOTS_HREF)}>All shoots</Button>
      </EmptyPlace>
    </Shell>
  );
}

function HomePage() {
  const navigate = useNavigate();
  return <Home onGo={useGo()} onOnly={(shootId) => void navigate({ href: shootHref(shootId), replace: true })} />;
}

const Shoots = lazyRouteComponent(() => import('./places/Shoots.tsx'), 'Shoots');

function ShootsPage() {
  return (
    <Suspense fallback={null}>
      <Shoots onGo={useGo()} />
    </Suspense>
  );
}

const Gallery = lazyRouteComponent(() => import('./places/Gallery.tsx'), 'Gallery');

function GalleryPage() {
  return (
    <Suspense fallback={null}>
      <Gallery onGo={useGo()} />
    </Suspense>
  );
}

/** What the address says after the shoot, for every place that has a word of its own there. */
const PLACES: Readonly<Record<string, ShootPlace>> = {
  shot: 'Shot',
  light: 'Light',
  day: 'Day',
  footage: 'Footage',
  kit: 'Kit',
  paper: 'Paper',
  reckoner: 'Reckoner',
  history: 'History',
};

function ShootLayout() {
  const { shootId = '', shotId } = useParams({ strict: false });
  const word = useMatches({ select: (matches) => matches.at(-1)?.routeId.split('/')[2] ?? '' });
  return (
    <ShootFrame key={shootId} shootId={shootId} shotId={shotId} place={PLACES[word] ?? 'Shoot'} onGo={useGo()}>
      <Outlet />
    </ShootFrame>
  );
}

function ShootPage() {
  // The next place is most often a shot: its script comes while the shoot is read.
  useEffect(() => void Shot.preload?.(), []);
  return <Shoot open={useOpenShoot()} onGo={useGo()} />;
}

const Shot = lazyRouteComponent(() => import('./places/Shot.tsx'), 'Shot');

function ShotPage() {
  const open = useOpenShoot();
  const go = useGo();
  const { shotId = '' } = useParams({ strict: false });
  const follow = (path: string) => {
    const href = kitHrefAt(open.id, path);
    if (href !== undefined) go(href);
    return href !== undefined;
  };
  return (
    <Suspense fallback={null}>
      <Shot
        open={open}
        shotId={shotId}
        onChooseShot={(id: string) => go(shotHref(open.id, id))}
        onFollow={follow}
        onGo={go}
      />
    </Suspense>
  );
}

const Kit = lazyRouteComponent(() => import('./places/Kit.tsx'), 'Kit');

function KitPage() {
  const open = useOpenShoot();
  const go = useGo();
  const { kindKey, itemId } = useParams({ strict: false });
  const hrefOf = (kind?: string, item?: string) => kitHref(open.id, kind, item);
  return (
    <Suspense fallback={null}>
      <Kit open={open} kindKey={kindKey} itemId={itemId} hrefOf={hrefOf} onGo={go} />
    </Suspense>
  );
}

const Light = lazyRouteComponent(() => import('./places/Light.tsx'), 'Light');

function LightPage() {
  const open = useOpenShoot();
  const go = useGo();
  const { setupId } = useParams({ strict: false });
  const hrefOf = (id?: string) => lightHref(open.id, id);
  return (
    <Suspense fallback={null}>
      <Light open={open} setupId={setupId} hrefOf={hrefOf} onGo={go} />
    </Suspense>
  );
}

const Day = lazyRouteComponent(() => import('./places/Day.tsx'), 'Day');

function DayPage() {
  return (
    <Suspense fallback={null}>
      <Day open={useOpenShoot()} onGo={useGo()} />
    </Suspense>
  );
}

const Footage = lazyRouteComponent(() => import('./places/Footage.tsx'), 'Footage');

function FootagePage() {
  const { clipId } = useParams({ strict: false });
  const search: Record<string, unknown> = useSearch({ strict: false });
  return (
    <Suspense fallback={null}>
      <Footage open={useOpenShoot()} clipId={clipId} withId={readSearch(writeSearch(search))['with']} onGo={useGo()} />
    </Suspense>
  );
}

const History = lazyRouteComponent(() => import('./places/History.tsx'), 'History');

function HistoryPage() {
  const open = useOpenShoot();
  return (
    <Suspense fallback={null}>
      <History open={open} />
    </Suspense>
  );
}

const Paper = lazyRouteComponent(() => import('./places/Paper.tsx'), 'Paper');

function PaperPage() {
  const open = useOpenShoot();
  const navigate = useNavigate();
  const search: Record<string, unknown> = useSearch({ strict: false });
  return (
    <Suspense fallback={null}>
      <Paper
        open={open}
        search={readSearch(writeSearch(search))}
        onSearch={(next: Readonly<Record<string, string>>) =>
          void navigate({ href: paperHref(open.id) + writeSearch(next), replace: true, resetScroll: false })
        }
      />
    </Suspense>
  );
}

/** The catalogue of laws is long, and only this place shows it: its script comes when it is first gone to. */
const Reckoner = lazyRouteComponent(() => import('./places/Reckoner.tsx'), 'Reckoner');

function ReckonerPlace({ open }: { readonly open?: OpenShoot }) {
  const go = useGo();
  const navigate = useNavigate();
  const { lawId } = useParams({ strict: false });
  const search: Record<string, unknown> = useSearch({ strict: false });
  return (
    <Suspense fallback={null}>
      <Reckoner
        lawId={lawId}
        search={readSearch(writeSearch(search))}
        shootUnits={open?.shoot.shoot.units}
        hrefOf={(id?: string) => reckonerHref({ shootId: open?.id, lawId: id })}
        onGo={go}
        onAddress={(href: string) => void navigate({ href, resetScroll: false })}
      />
    </Suspense>
  );
}

function ReckonerPage() {
  return (
    <ReckonerFrame onGo={useGo()}>
      <ReckonerPlace />
    </ReckonerFrame>
  );
}

function ShootReckonerPage() {
  return <ReckonerPlace open={useOpenShoot()} />;
}

const root = createRootRoute({ component: Outlet, notFoundComponent: NotFound });
const home = createRoute({ getParentRoute: () => root, path: '/', component: HomePage });
const shoots = createRoute({ getParentRoute: () => root, path: 'shoots', component: ShootsPage });
const gallery = createRoute({ getParentRoute: () => root, path: 'gallery', component: GalleryPage });
const reckoner = createRoute({ getParentRoute: () => root, path: 'reckoner', component: ReckonerPage });
const reckonerIndex = createRoute({ getParentRoute: () => reckoner, path: '/' });
const reckonerLaw = createRoute({ getParentRoute: () => reckoner, path: '$lawId' });
const shoot = createRoute({ getParentRoute: () => root, path: '$shootId', component: ShootLayout });
const shootIndex = createRoute({ getParentRoute: () => shoot, path: '/', component: ShootPage });
const shot = createRoute({ getParentRoute: () => shoot, path: 'shot/$shotId', component: ShotPage });
const kit = createRoute({ getParentRoute: () => shoot, path: 'kit', component: KitPage });
const kitIndex = createRoute({ getParentRoute: () => kit, path: '/' });
const kitKind = createRoute({ getParentRoute: () => kit, path: '$kindKey' });
const kitItem = createRoute({ getParentRoute: () => kit, path: '$kindKey/$itemId' });
const light = createRoute({ getParentRoute: () => shoot, path: 'light', component: LightPage });
const lightIndex = createRoute({ getParentRoute: () => light, path: '/' });
const lightSetup = createRoute({ getParentRoute: () => light, path: '$setupId' });
const day = createRoute({ getParentRoute: () => shoot, path: 'day', component: DayPage });
const footage = createRoute({ getParentRoute: () => shoot, path: 'footage', component: FootagePage });
const footageIndex = createRoute({ getParentRoute: () => footage, path: '/' });
const footageClip = createRoute({ getParentRoute: () => footage, path: '$clipId' });
const paper = createRoute({ getParentRoute: () => shoot, path: 'paper', component: PaperPage });
const history = createRoute({ getParentRoute: () => shoot, path: 'history', component: HistoryPage });
const shootReckoner = createRoute({ getParentRoute: () => shoot, path: 'reckoner', component: ShootReckonerPage });
const shootReckonerIndex = createRoute({ getParentRoute: () => shootReckoner, path: '/' });
const shootReckonerLaw = createRoute({ getParentRoute: () => shootReckoner, path: '$lawId' });

export const router = createRouter({
  routeTree: root.addChildren([
    home,
    shoots,
    gallery,
    reckoner.addChildren([reckonerIndex, reckonerLaw]),
    shoot.addChildren([
      shootIndex,
      shot,
      history,
      light.addChildren([lightIndex, lightSetup]),
      day,
      footage.addChildren([footageIndex, footageClip]),
      kit.addChildren([kitIndex, kitKind, kitItem]),
      paper,
      shootReckoner.addChildren([shootReckonerIndex, shootReckonerLaw]),
    ]),
  ]),
  parseSearch: readSearch,
  stringifySearch: writeSearch,
  scrollRestoration: true,
});

declare module '@tanstack/react-router' {
  interface Register {
    readonly router: typeof router;
  }
}
