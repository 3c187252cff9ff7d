/** Which address shows which place. */
import {
  createRootRoute,
  createRoute,
  createRouter,
  Outlet,
  useNavigate,
  useParams,
  useRouter,
} from '@tanstack/react-router';
import { EmptyPlace } from './parts/EmptyPlace.tsx';
import { Button } from './parts/Button.tsx';
import { Shell } from './parts/Shell.tsx';
import { SHOOTS_HREF, shootHref, shotHref } from './hrefs.ts';
import { Home } from './places/Home.tsx';
import { Shoot } from './places/Shoot.tsx';
import { ShootFrame } from './places/ShootFrame.tsx';
import { Shoots } from './places/Shoots.tsx';
import { Shot } from './places/Shot.tsx';
import { useOpenShoot } from './state/hooks.ts';

/** Goes to an address of ours without loading the page anew. */
function useGo(): (href: string) => void {
  const { history } = useRouter();
  return (href) => history.push(href);
}

function NotFound() {
  const go = useGo();
  return (
    <Shell places={[{ label: 'All shoots', href: SHOOTS_HREF, isCurrent: false }]} onGo={go}>
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

function ShootsPage() {
  return <Shoots onGo={useGo()} />;
}

function ShootLayout() {
  const { shootId = '', shotId } = useParams({ strict: false });
  return (
    <ShootFrame key={shootId} shootId={shootId} shotId={shotId} onGo={useGo()}>
      <Outlet />
    </ShootFrame>
  );
}

function ShootPage() {
  return <Shoot open={useOpenShoot()} onGo={useGo()} />;
}

function ShotPage() {
  const open = useOpenShoot();
  const go = useGo();
  const { shotId = '' } = useParams({ strict: false });
  return <Shot open={open} shotId={shotId} onChooseShot={(id) => go(shotHref(open.id, id))} />;
}

const root = createRootRoute({ component: Outlet, notFoundComponent: NotFound });
const home = createRoute({ getParentRoute: () => root, path: '/', component: HomePage });
const shoots = createRoute({ getParentRoute: () => root, path: 'shoots', component: ShootsPage });
const shoot = createRoute({ getParentRoute: () => root, path: '$shootId', component: ShootLayout });
const shootIndex = createRoute({ getParentRoute: () => shoot, path: '/', component: ShootPage });
const shot = createRoute({ getParentRoute: () => shoot, path: 'shot/$shotId', component: ShotPage });

export const router = createRouter({
  routeTree: root.addChildren([home, shoots, shoot.addChildren([shootIndex, shot])]),
  scrollRestoration: true,
});

declare module '@tanstack/react-router' {
  interface Register {
    readonly router: typeof router;
  }
}
