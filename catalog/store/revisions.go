package store

import (
	"bytes"
	"compress/gzip"
	"context"
	"database/sql"
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"sync"
	"time"

	"pressworth/catalog"
	"pressworth/quote"
)

// followUpAfter is how many days after sending a quote is followed up where nothing else is said: common practice, no
// source.
const followUpAfter = 7

// FreezeRevision keeps what was sent to the customer as the quote's next revision: one frozen job for each option, or
// one with Option 0 where there are none. A draft, or a declined quote, becomes sent. The quote may be accepted until
// the day its own validity ends, and is to be followed up in a week.
func (s *Store) FreezeRevision(ctx context.Context, id int64, how string, frozen []catalog.Revision) (number int, err error) {
	if len(frozen) == 0 || len(frozen) > catalog.MostOptions {
		return 0, fmt.Errorf("freeze revision: %d options", len(frozen))
	}
	validDays := 0
	for _, r := range frozen {
		job, _, err := r.Open()
		if err != nil {
			return 0, err
		}
		if r.SHA256 != catalog.Seal(r.Job, r.Result) {
			return 0, fmt.Errorf("freeze revision: %w", catalog.ErrAltered)
		}
		if job.Paper != nil {
			validDays = job.Paper.ValidDays
		}
	}
	err = s.book(ctx, id, func(w *writer) {
		number = 1 + int(w.count("SELECT revision FROM quote WHERE id = ?", id))
		for _, r := range frozen {
			r.QuoteID, r.Number, r.SentHow = id, number, how
			s.insertRevision(w, r)
		}
		s.sent(w, id, number, how, validDays)
	})
	return number, err
}

func (s *Store) insertRevision(w *writer, r catalog.Revision) {
	if r.MadeAt == "" {
		r.MadeAt = s.stamp()
	}
	r.ID = w.do(`INSERT INTO revision (quote_id, number, option, option_name, made_at, sent_how, sha256, pieces, total, deposit, subtotal, cost, margin, hours)
		VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`, r.QuoteID, r.Number, r.Option, r.OptionName, r.MadeAt, r.SentHow, r.SHA256,
		r.Pieces, r.Total, r.Deposit, r.Subtotal, r.Cost, r.Margin, r.Hours)
	w.do("INSERT INTO revision_doc (revision_id, job, result) VALUES (?, ?, ?)", r.ID, pack(r.Job), pack(r.Result))
}

// sent moves a quote on that was given to the customer.
func (s *Store) sent(w *writer, id int64, number int, how string, validDays int) {
	w.do("UPDATE quote SET revision = ?, changed = ? WHERE id = ?", number, s.stamp(), id)
	if state := w.word("SELECT state FROM quote WHERE id = ?", id); state == catalog.Accepted || state == catalog.Finished {
		return // a change to the order: it is accepted anew, or stays
	}
	s.turn(w, id, catalog.Sent, how, s.today())
	expires := ""
	if validDays > 0 {
		expires = s.now().AddDate(0, 0, validDays).Format(time.DateOnly)
	}
	w.do("UPDATE quote SET expires = ?, follow_up = ? WHERE id = ?", expires, s.now().AddDate(0, 0, followUpAfter).Format(time.DateOnly), id)
	indexQuotes(w, "id = ?", id)
}

const revisionColumns = `r.id, r.quote_id, r.number, r.option, r.option_name, r.made_at, r.sent_how, r.sha256, r.pieces, r.total, r.deposit, r.subtotal,
	r.cost, r.margin, r.hours`

func revisionFields(r *catalog.RevisionRow) []any {
	return []any{
		&r.ID, &r.QuoteID, &r.Number, &r.Option, &r.OptionName, &r.MadeAt, &r.SentHow, &r.SHA256, &r.Pieces, &r.Total, &r.Deposit, &r.Subtotal,
		&r.Cost, &r.Margin, &r.Hours,
	}
}

// Revisions lists a quote's revisions, the latest first, the options of one in their order.
func (s *Store) Revisions(ctx context.Context, id int64) ([]catalog.RevisionRow, error) {
	all, err := rows(ctx, s.read, func(r *sql.Rows) (x catalog.RevisionRow, err error) { return x, r.Scan(revisionFields(&x)...) },
		"SELECT "+revisionColumns+" FROM revision r WHERE r.quote_id = ? ORDER BY r.number DESC, r.option", id)
	if err != nil {
		return nil, fmt.Errorf("revisions of quote %d: %w", id, err)
	}
	return all, nil
}

// Revision reads a revision and holds its documents against their SHA-256. Where they do not match, it comes with what
// was read beside a catalog.Altered: nothing is hidden, and nothing else is affected.
func (s *Store) Revision(ctx context.Context, revisionID int64) (catalog.Revision, error) {
	x, err := one(ctx, s.read, scanRevision, revisionQuery+" WHERE r.id = ?", revisionID)
	if err != nil {
		return x.Revision, fmt.Errorf("revision %d: %w", revisionID, err)
	}
	return x.Revision, x.verify()
}

// EachRevision hands every frozen revision on, in the order of their making, with what is wrong with it, if anything.
func (s *Store) EachRevision(ctx context.Context, each func(catalog.Revision, error) error) error {
	ids, err := rows(ctx, s.read, scanID, "SELECT id FROM revision ORDER BY id")
	if err != nil {
		return fmt.Errorf("revisions: %w", err)
	}
	for _, id := range ids {
		r, err := s.Revision(ctx, id)
		if err != nil && !errors.Is(err, catalog.ErrAltered) {
			return err
		}
		if err := each(r, err); err != nil {
			return err
		}
	}
	return nil
}

const revisionQuery = "SELECT " + revisionColumns + `, q.number, d.job, d.result FROM revision r JOIN quote q ON q.id = r.quote_id
	JOIN revision_doc d ON d.revision_id = r.id`

// kept is a revision as it lies in the file.
type kept struct {
	catalog.Revision
	quote  string
	packed error // what is wrong with the packing
}

// packed is a revision whose documents are packed still.
type packed struct {
	kept
	job, result []byte
}

func scanPacked(r *sql.Rows) (p packed, err error) {
	return p, r.Scan(append(revisionFields(&p.RevisionRow), &p.quote, &p.job, &p.result)...)
}

func (p packed) unpacked() kept {
	k := p.kept
	var errJob, errResult error
	k.Job, errJob = unpack(p.job)
	k.Result, errResult = unpack(p.result)
	k.packed = errors.Join(errJob, errResult)
	return k
}

func scanRevision(r *sql.Rows) (kept, error) {
	p, err := scanPacked(r)
	if err != nil {
		return p.kept, err
	}
	return p.unpacked(), nil
}

func (k kept) verify() error {
	read := catalog.Seal(k.Job, k.Result)
	if k.packed == nil && read == k.SHA256 {
		return nil
	}
	return catalog.Altered{Quote: k.quote, Number: k.Number, Frozen: k.SHA256, Read: read}
}

// pack packs a document; the same document always gives the same bytes.
func pack(doc []byte) []byte {
	var b bytes.Buffer
	w := gzip.NewWriter(&b)
	_, _ = w.Write(doc) // a buffer takes everything
	_ = w.Close()
	return b.Bytes()
}

// mostUnpacked bounds what a damaged document may unpack to.
const (
	mostUnpacked = 256 << 20
	mostGuessed  = 1 << 20 // what is set aside before anything was unpacked
)

// unpackers are used again: one takes longer to make than to read a document with.
var unpackers = sync.Pool{New: func() any { return new(gzip.Reader) }}

func unpack(packed []byte) ([]byte, error) {
	r := unpackers.Get().(*gzip.Reader)
	defer unpackers.Put(r)
	if err := r.Reset(bytes.NewReader(packed)); err != nil {
		return nil, err
	}
	size := binary.LittleEndian.Uint32(packed[len(packed)-4:]) // RFC 1952, 2.3.1: ISIZE; a damaged one is only a bad guess
	into := bytes.NewBuffer(make([]byte, 0, min(int(size)+bytes.MinRead, mostGuessed)))
	_, err := into.ReadFrom(io.LimitReader(r, mostUnpacked))
	return into.Bytes(), err
}

// frozen reads what a revision was frozen as, within a change.
func (w *writer) frozen(revisionID int64) (k kept, job quote.Job, result quote.Result) {
	if w.err != nil {
		return k, job, result
	}
	if k, w.err = one(w.ctx, w.tx, scanRevision, revisionQuery+" WHERE r.id = ?", revisionID); w.err != nil {
		return k, job, result
	}
	if w.err = k.verify(); w.err != nil {
		return k, job, result
	}
	job, result, w.err = k.Open()
	return k, job, result
}
