import { catalogueHolds } from '../../../../test/catalogue.ts';
import { LAMP_LAWS } from './catalogue.ts';

catalogueHolds(LAMP_LAWS);
