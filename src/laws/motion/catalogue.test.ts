import { catalogueHolds } from '../../../test/catalogue.ts';
import { MOTION_LAWS } from './catalogue.ts';

catalogueHolds(MOTION_LAWS);
