import { writeFileSync } from 'node:fs';
import { NOTICES_FILE, noticesPage } from './notices-page.ts';

writeFileSync(NOTICES_FILE, noticesPage());
