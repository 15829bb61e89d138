package present

import (
	"fmt"
	"io"

	"pressworth/catalog/pricefile"
)

// mostPeople is the longest list that is read.
const mostPeople = 20_000

// ReadRoster reads the rows of a list of people from a CSV or XLSX file, in whatever encoding it is.
func ReadRoster(r io.Reader) ([][]string, error) {
	f, err := pricefile.Open(r)
	if err != nil {
		return nil, err
	}
	rows, err := f.Table(mostPeople + 2)
	if err == nil && len(rows) > mostPeople+1 {
		return nil, fmt.Errorf("more than %d rows: divide it into several lists", mostPeople)
	}
	return rows, err
}
