/** Coefficients of RODAS, a stiffly accurate, L-stable Rosenbrock method of order 4 with an embedded method of order 3, in the form
 *  without matrix products: (I/(h gamma) - J) k_i = f(y + sum_j a_ij k_j) + sum_j c_ij k_j / h.
 *  The sixth k is at once the last correction and the error estimate: y1 = y + sum_j a_6j k_j + k_6.
 *  Source: E. Hairer, G. Wanner, Solving Ordinary Differential Equations II, 2nd ed. 1996, section IV.7 and the code RODAS of its
 *  appendix, METH = 1. Proof in createOde.test.ts: measured order 4, dense output 3. */
export const gamma = 0.25;

/** Stages. */
export const stages = 6;

/** a_ij, row i from 0, five to a row. */
export const stageWeights = new Float64Array([
  ...[0, 0, 0, 0, 0],
  ...[1.544, 0, 0, 0, 0],
  ...[0.9466785280815826, 0.2557011698983284, 0, 0, 0],
  ...[3.314825187068521, 2.896124015972201, 0.9986419139977817, 0, 0],
  ...[1.221224509226641, 6.019134481288629, 12.53708332932087, -0.687886036105895, 0],
  ...[1.221224509226641, 6.019134481288629, 12.53708332932087, -0.687886036105895, 1],
]);

/** c_ij, row i from 0, five to a row. */
export const couplingWeights = new Float64Array([
  ...[0, 0, 0, 0, 0],
  ...[-5.6688, 0, 0, 0, 0],
  ...[-2.430093356833875, -0.2063599157091915, 0, 0, 0],
  ...[-0.1073529058151375, -9.594562251023355, -20.47028614809616, 0, 0],
  ...[7.496443313967647, -10.24680431464352, -33.99990352819905, 11.7089089320616, 0],
  ...[8.083246795921522, -7.981132988064893, -31.52159432874371, 16.31930543123136, -6.058818238834054],
]);

/** Weights of k_1 to k_5 in the first of the two corrections of the dense output
 *  y(t0 + s h) = (1 - s) y0 + s (y1 + (1 - s) (d2 + s d3)). */
export const denseWeights2 = new Float64Array([
  10.12623508344586, -7.487995877610167, -34.80091861555747, -7.992771707568823, 1.025137723295662,
]);
/** Those of the second correction. */
export const denseWeights3 = new Float64Array([
  -0.6762803392801253, 6.087714651680015, 16.43084320892478, 24.76722511418386, -6.594389125716872,
]);
