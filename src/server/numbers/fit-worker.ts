import { parentPort, workerData } from 'node:worker_threads';
import { type FitTask, fitHere } from './fit.ts';

parentPort?.postMessage(fitHere(workerData as FitTask));
