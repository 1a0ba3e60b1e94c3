// For editors, of a clone: a package has the types of the options in a file that needs no other (test/package/emit.ts).
export { publication } from './print/publication.ts';
