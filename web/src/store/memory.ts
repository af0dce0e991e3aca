/** What the page remembers on this device. Where the browser forbids it, it is kept until the page is closed. */
export class Memory {
  private readonly kept = new Map<string, string>();
  private allowed = true;

  constructor(private readonly storage: () => Storage) {
    try {
      const probe = 'fretlore:probe';
      storage().setItem(probe, '1');
      storage().removeItem(probe);
    } catch {
      this.allowed = false;
    }
  }

  /** False when nothing outlasts the page. */
  get isKept(): boolean { return this.allowed; }

  read<T>(key: string, otherwise: T): T {
    try {
      const text = this.kept.get(key) ?? (this.allowed ? this.storage().getItem(key) : null);
      return text === null || text === undefined ? otherwise : merged(otherwise, JSON.parse(text) as T);
    } catch {
      return otherwise;
    }
  }

  write(key: string, value: unknown): void {
    const text = JSON.stringify(value);
    this.kept.set(key, text);
    if (!this.allowed) return;
    try {
      this.storage().setItem(key, text);
    } catch {
      this.allowed = false;
    }
  }
}

// What an earlier page wrote may lack what this one knows, or have it in another kind.
function merged<T>(otherwise: T, read: T): T {
  if (typeof otherwise !== 'object' || otherwise === null || Array.isArray(otherwise)) return read ?? otherwise;
  if (typeof read !== 'object' || read === null || Array.isArray(read)) return otherwise;
  const both: Record<string, unknown> = { ...(read as Record<string, unknown>) };
  for (const [key, value] of Object.entries(otherwise)) {
    const other = both[key];
    if (other === undefined || (value !== null && other !== null && (typeof value !== typeof other || Array.isArray(value) !== Array.isArray(other)))) both[key] = value;
  }
  return both as T;
}
