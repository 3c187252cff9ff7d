import { catalogueHolds } from '../../../test/catalogue.ts';
import { BUFFER_LAWS } from './catalogue.ts';

catalogueHolds(BUFFER_LAWS);
