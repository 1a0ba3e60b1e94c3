/** Names of this machine and of who uses it. */
import { hostname, userInfo } from 'node:os';

/** The name of the machine without its domain, and that of the user where the system has one: a container may run for a bare number. */
export function ownNames(user: () => { readonly username: string } = userInfo): string[] {
  const machine = hostname().split('.', 1)[0]!;
  try {
    return [machine, user().username];
  } catch {
    return [machine];
  }
}
