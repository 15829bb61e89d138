package pricefile

import "errors"

// errEnough ends the reading of a table early.
var errEnough = errors.New("enough rows")

// Table gives the rows of the file as they stand, at most so many: for lists that are no price lists, like the members
// of a team. The rows are read once.
func (f *File) Table(most int) ([][]string, error) {
	var rows [][]string
	err := f.each(0, func(r record) error {
		if len(rows) == most {
			return errEnough
		}
		row := make([]string, len(r.cells))
		for i, cell := range r.cells {
			row[i] = readable(cell)
		}
		rows = append(rows, row)
		return nil
	})
	if errors.Is(err, errEnough) {
		err = nil
	}
	return rows, err
}
