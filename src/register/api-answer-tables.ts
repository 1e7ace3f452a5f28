/** The table of answers to keyed writes. */
export interface ApiAnswerTables {
  readonly api_answers: {
    readonly token_id: number;
    readonly key: string;
    readonly request_sha256: string;
    readonly begun_at: string;
    readonly status: number | null;
    readonly content_type: string | null;
    readonly body: string | null;
  };
}
