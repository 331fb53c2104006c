/** Assembles schemas/*.schema.json from the fragments. They are committed, so that editors find them. */
import { readFileSync } from 'node:fs';
import { readFragments } from './fragments.mjs';
import { inRoot, writeIfChanged } from './files.mjs';
import { profileSchema } from './profile-schema.mjs';
import { projectSchema } from './project-schema.mjs';

/** Schemas by the path of their file. */
export function assembled() {
  const all = readFragments();
  return { 'schemas/project.schema.json': projectSchema(all), 'schemas/profile.schema.json': profileSchema(all) };
}

/** Whether the file holds that schema already, however it is laid out: laying out takes longer than all the rest. */
export function isUpToDate(path, schema) {
  try {
    return JSON.stringify(JSON.parse(readFileSync(inRoot(path), 'utf8'))) === JSON.stringify(schema);
  } catch {
    return false;
  }
}

export async function assembleSchemas() {
  const stale = Object.entries(assembled()).filter(([path, schema]) => !isUpToDate(path, schema));
  if (stale.length === 0) return 'up to date';
  const { format } = await import('prettier');
  for (const [path, schema] of stale)
    writeIfChanged(path, await format(JSON.stringify(schema), { parser: 'json', printWidth: 120 }));
  return `${stale.length} written`;
}
