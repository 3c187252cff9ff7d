import { catalogueHolds } from '../../../../test/catalogue.ts';
import { MODIFIER_LAWS } from './catalogue.ts';

catalogueHolds(MODIFIER_LAWS);
