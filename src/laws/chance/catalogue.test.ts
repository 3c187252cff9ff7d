import { catalogueHolds } from '../../../test/catalogue.ts';
import { CHANCE_LAWS } from './catalogue.ts';

catalogueHolds(CHANCE_LAWS);
