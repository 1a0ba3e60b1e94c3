/** Where a command says what it did and what is wrong. */

export interface Output {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
}
