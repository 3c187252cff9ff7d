/** The player of footage on the page, for the keys that drive it: it offers itself while it is there. */

export interface PlayerKeys {
  /** Plays, or stops where it is. */
  readonly toggle: () => void;
  readonly stepBy: (frames: number) => void;
  readonly toIn: () => void;
  readonly toOut: () => void;
  /** Absent where no action was found. */
  readonly toPeak?: () => void;
  /** Keeps from, or up to, the frame it stands at. */
  readonly keepFromHere: () => void;
  readonly keepToHere: () => void;
  readonly setLooped: (next: (isLooped: boolean) => boolean) => void;
}

let offered: PlayerKeys | undefined;

/** Offers a player until the function returned is called, or another one offers itself. */
export function offerPlayer(player: PlayerKeys): () => void {
  offered = player;
  return () => {
    if (offered === player) offered = undefined;
  };
}

export const playerNow = (): PlayerKeys | undefined => offered;
