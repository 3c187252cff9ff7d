/** Writes the schemas in docs/schema from the code as built: `npm run build && node tools/writeSchemas.mjs`. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { shootJsonSchemaText } from '../dist/node/document/jsonSchema.js';

const folder = new URL('../docs/schema/', import.meta.url);
mkdirSync(folder, { recursive: true });
writeFileSync(new URL('shoot.schema.json', folder), shootJsonSchemaText());
