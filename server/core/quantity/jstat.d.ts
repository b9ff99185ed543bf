// The part of jstat that core uses, typed: the package ships no types of its own.

declare module "jstat" {
  interface Jstat {
    readonly studentt: {
      /** Quantile of Student's t: the value that a share `p` of the distribution lies below. */
      inv(p: number, dof: number): number;
      cdf(x: number, dof: number): number;
    };
    gammaln(x: number): number;
    readonly normal: {
      inv(p: number, mean: number, standardDeviation: number): number;
      cdf(x: number, mean: number, standardDeviation: number): number;
    };
  }
  const jstat: Jstat;
  export default jstat;
}
