import { sayShown, showQuantity } from '../../../base/quantity.ts';

export const saySize = (size_B: number): string => sayShown(showQuantity('bytes', size_B));
