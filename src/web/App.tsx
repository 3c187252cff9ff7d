import { RouterProvider } from '@tanstack/react-router';
import { router } from './routes.tsx';

/** The whole app: the place that the address names. */
export function App() {
  return <RouterProvider router={router} />;
}
