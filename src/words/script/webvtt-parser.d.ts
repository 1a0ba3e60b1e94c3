/** The part of webvtt-parser that is used; the package has no types of its own. */
declare module 'webvtt-parser' {
  export class WebVTTParser {
    parse(
      text: string,
      mode?: 'metadata' | 'chapters' | 'subtitles',
    ): {
      readonly cues: readonly {
        readonly startTime: number;
        readonly endTime: number;
        readonly text: string;
        readonly id: string;
      }[];
      readonly errors: readonly { readonly message: string; readonly line: number; readonly col?: number }[];
    };
  }
}
