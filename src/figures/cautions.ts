/** Safety notices that a run's or device's own data or setting calls for. */
export { attemptCautions } from './cautions/attempts.ts';
export { type Caution, type MergedCaution, mergeCautions } from './cautions/caution.ts';
export { cautions } from './cautions/run.ts';
