import { showQuantity } from '../../../base/quantity.ts';
import { saidShown } from '../shot/showValue.ts';

/** "4.25 s": seconds of the film as the board says them. */
export const seconds = (time_s: number) => saidShown(showQuantity('time', time_s, { digits: 4 }));
