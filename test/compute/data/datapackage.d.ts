declare module 'datapackage' {
  interface Resource {
    readonly name: string;
    readonly valid: boolean;
    readonly errors: readonly Error[];
    readonly tabular: boolean;
    read(options?: { keyed?: boolean }): Promise<Record<string, unknown>[]>;
  }
  interface Package {
    readonly valid: boolean;
    readonly errors: readonly Error[];
    readonly resources: readonly Resource[];
  }
  const library: {
    Package: { load(descriptor: object, options: { basePath: string; strict: boolean }): Promise<Package> };
    Profile: { load(name: string): Promise<{ validate(descriptor: object): { valid: boolean; errors: readonly Error[] } }> };
  };
  export default library;
}
