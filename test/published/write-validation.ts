import { writeFileSync } from 'node:fs';
import { VALIDATION_FILE } from './validation-file.ts';
import { validationPage } from './validation-page.ts';

writeFileSync(VALIDATION_FILE, validationPage());
