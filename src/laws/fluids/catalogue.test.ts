import { catalogueHolds } from '../../../test/catalogue.ts';
import { FLUID_LAWS } from './catalogue.ts';

catalogueHolds(FLUID_LAWS);
