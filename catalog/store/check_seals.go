package store

import (
	"context"
	"database/sql"
	"errors"
	"runtime"
	"slices"
	"sync"
)

// sealedSince is the schema that froze revisions first.
const sealedSince = 6

// seals holds every frozen revision against its SHA-256. One that does not match is no damage of the file: it is named,
// and neither keeps a backup from being made nor from being put back, for all else would be lost with it.
func (c *Checked) seals(ctx context.Context, conn *sql.Conn) error {
	if c.Schema < sealedSince {
		return nil
	}
	r, err := conn.QueryContext(ctx, revisionQuery+" ORDER BY r.id")
	if err != nil {
		return err
	}
	defer r.Close()
	read, found := make(chan packed, 64), make(chan string)
	var workers sync.WaitGroup
	for range max(runtime.GOMAXPROCS(0)-1, 1) { // one is left to the window
		workers.Go(func() {
			for p := range read {
				if err := p.unpacked().verify(); err != nil {
					found <- err.Error()
				}
			}
		})
	}
	go func() {
		for r.Next() && err == nil {
			var p packed
			if p, err = scanPacked(r); err == nil {
				read <- p
			}
		}
		close(read)
		workers.Wait()
		close(found)
	}()
	for text := range found {
		c.Altered = append(c.Altered, text)
	}
	slices.Sort(c.Altered)
	return errors.Join(err, r.Err())
}
