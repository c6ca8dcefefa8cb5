/** One natural motion e^(λt), or a pair with λ and its conjugate where `im` is above zero. */
export interface Mode {
  readonly re: number;
  readonly im: number;
  /** For each output what the motion contributes to it, r of r/(s − λ): real and imaginary parts. */
  readonly residues: readonly { readonly re: number; readonly im: number }[];
}
