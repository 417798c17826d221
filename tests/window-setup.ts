import { freshBuild } from '../main/build/build.mjs';

/** The window's tests drive the built app: it must be that of today. */
export default async function buildFirst(): Promise<void> {
  await freshBuild();
}
