/** Rewrites the published JSON Schema of the site file: `npm run schema`. A test fails while it is out of step. */
import { writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { siteJsonSchemaText } from "../../rules/site/json-schema.ts";

const target = fileURLToPath(new URL("../../demo-sites/site.schema.json", import.meta.url));
writeFileSync(target, siteJsonSchemaText());
process.stdout.write("Wrote demo-sites/site.schema.json\n");
