package blanks

import "strings"

// inWords writes prices by quantity, 3.10 72:2.85, as one says them.
func inWords(breaks string) string {
	fields := strings.Fields(breaks)
	for i, f := range fields {
		if from, each, ok := strings.Cut(f, ":"); ok {
			fields[i] = "from " + from + " " + each
		}
	}
	return strings.Join(fields, ", ")
}
