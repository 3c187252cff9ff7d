import { catalogueHolds } from '../../../test/catalogue.ts';
import { FLICKER_LAWS } from './catalogue.ts';

catalogueHolds(FLICKER_LAWS);
