package store

import (
	"context"
	"database/sql"
	"fmt"

	"pressworth/catalog"
)

// ToDo lists what needs doing on a day (2006-01-02): what is due first, then by the day it is due. A quote may stand in
// it more than once.
func (s *Store) ToDo(ctx context.Context, day string) ([]catalog.ToDo, error) {
	all, err := rows(ctx, s.read, func(r *sql.Rows) (t catalog.ToDo, err error) {
		return t, r.Scan(append(quoteFields(&t.QuoteRow), &t.Kind, &t.Due)...)
	}, toDo, day)
	if err != nil {
		return nil, fmt.Errorf("what needs doing: %w", err)
	}
	for i := range all {
		all[i].Text = inWords(all[i], day)
	}
	return all, nil
}

// soon is how many days ahead an expiry is mentioned.
const soon = "+3 days"

// toDo asks for each kind of thing in turn. A step of an accepted job is due by the day the goods are needed.
// Money is due when the goods are handed over, or so many days later as the customer's terms say.
const toDo = `WITH owing(id, day) AS (
	SELECT q.id, date(coalesce(s.taken_on, q.finished), '+' || CASE WHEN c.terms IN ('net', 'po') THEN c.net_days ELSE 0 END || ' days')
		FROM quote q INDEXED BY quote_agreed JOIN revision r ON r.id = q.accepted_id LEFT JOIN customer c ON c.id = q.customer_id
		LEFT JOIN step s ON s.quote_id = q.id AND s.name = 'collected'
		WHERE (q.state = 'finished' OR s.quote_id IS NOT NULL) AND CAST(r.total AS REAL) > CAST(q.paid AS REAL)
), due(id, kind, day) AS (
	SELECT id, 'follow up', follow_up FROM quote WHERE state IN ('draft', 'sent') AND follow_up <> '' AND follow_up <= ?1
	UNION ALL SELECT id, 'expiring', expires FROM quote WHERE state = 'sent' AND expires <> '' AND expires <= date(?1, '` + soon + `')
	UNION ALL SELECT q.id, CASE q.next_step
			WHEN 'get artwork approved' THEN 'get approved' WHEN 'order goods' THEN 'order' WHEN 'take goods in' THEN 'take in'
			WHEN 'press' THEN 'press' WHEN 'get ready' THEN 'press' ELSE 'hand over' END, q.needed_by
		FROM quote q WHERE q.state = 'accepted'
	UNION ALL SELECT q.id, 'overdue', q.needed_by FROM quote q WHERE q.state = 'accepted' AND q.needed_by <> '' AND q.needed_by < ?1
		AND NOT EXISTS (SELECT 1 FROM step s WHERE s.quote_id = q.id AND s.name = 'ready')
	UNION ALL SELECT id, 'collect money', day FROM owing WHERE day <= ?1
) SELECT ` + quoteColumns + `, kind, day FROM due JOIN quote INDEXED BY quote_found USING (id) ORDER BY kind <> 'overdue', day = '', day, number`

// inWords says what a thing to do is about.
func inWords(t catalog.ToDo, day string) string {
	switch t.Kind {
	case catalog.ToFollowUp:
		return "ask how they decided"
	case catalog.Expiring:
		if t.Due < day {
			return "expired on " + t.Due
		}
		return "expires on " + t.Due
	case catalog.Overdue:
		return "was needed on " + t.Due
	case catalog.ToCollect:
		return "not paid in full"
	}
	if t.Due == "" {
		return t.NextStep
	}
	return t.NextStep + ", needed on " + t.Due
}
