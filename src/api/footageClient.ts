/** A client of the routes of footage, without a way to send. */
import type { FolderListing, FootageEvent, FootageState } from '../record/footage.ts';
import { callsOf, type ClientParts } from './client.ts';
import { footageFolderPath, footagePath, measureClipPath, measuredClipPath, proxyPath, stopClipPath } from './footageRoutes.ts'; // prettier-ignore

export interface FootageClient {
  readonly look: (shootId: string) => Promise<FootageState>;
  /** Sent twice under one id, it happens once. */
  readonly happen: (shootId: string, what: { readonly eventId: string; readonly event: FootageEvent }) => Promise<FootageState>;
  readonly folder: (shootId: string, at: { readonly folder: string; readonly path: string }) => Promise<FolderListing>;
  readonly measure: (shootId: string, clipId: string, how: { readonly isAnew: boolean }) => Promise<FootageState>;
  readonly stop: (shootId: string, clipId: string) => Promise<FootageState>;
  /** In the form in which it is kept. */
  readonly measured: (shootId: string, clipId: string) => Promise<string>;
  readonly makeProxy: (shootId: string, clipId: string) => Promise<FootageState>;
} // prettier-ignore

/** Every call rejects with the server's own Fault where it refuses, and with whatever `send` rejects with. */
export function createFootageClient(parts: ClientParts): FootageClient {
  const { getText, get, post } = callsOf(parts);
  return {
    look: (shootId) => get(footagePath(shootId)),
    happen: (shootId, what) => post(footagePath(shootId), what),
    folder: (shootId, { folder, path }) => get(footageFolderPath(shootId, folder, path)),
    measure: (shootId, clipId, how) => post(measureClipPath(shootId, clipId), how),
    stop: (shootId, clipId) => post(stopClipPath(shootId, clipId), {}),
    measured: (shootId, clipId) => getText(measuredClipPath(shootId, clipId)),
    makeProxy: (shootId, clipId) => post(proxyPath(shootId, clipId), {}),
  };
}
