import { catalogueHolds } from '../../../../test/catalogue.ts';
import { AREA_LAWS } from './catalogue.ts';

catalogueHolds(AREA_LAWS);
