import { catalogueHolds } from '../../../test/catalogue.ts';
import { TIME_LAWS } from './catalogue.ts';

catalogueHolds(TIME_LAWS);
