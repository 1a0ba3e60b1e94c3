/** The part of webvtt-parser that is used; the package has no types of its own and no named exports. */
declare module 'webvtt-parser' {
  interface Parsed {
    readonly cues: readonly { readonly startTime: number; readonly endTime: number; readonly text: string; readonly id: string }[];
    readonly errors: readonly { readonly message: string; readonly line: number; readonly col?: number }[];
  }
  const library: { readonly WebVTTParser: new () => { parse(text: string, mode?: 'metadata' | 'chapters' | 'subtitles'): Parsed } };
  export default library;
}
