import type { TestProject } from 'vitest/node';
import { startCluster } from './cluster.ts';

declare module 'vitest' {
  interface ProvidedContext {
    /** The address of a database to which new ones can be added. */
    readonly postgres: string;
  }
}

/** One server for all tests of a run. */
export default function setup(project: TestProject): () => void {
  const cluster = startCluster({ durable: project.name === 'faults' });
  project.provide('postgres', cluster.urlOf('postgres'));
  return () => cluster.stop();
}
