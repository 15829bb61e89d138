package export

import "testing"

func BenchmarkQuote(b *testing.B) {
	job, result := regatta(b)
	for b.Loop() {
		if _, err := Quote(job, result, date); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkDocuments(b *testing.B) {
	job, result := regatta(b)
	for b.Loop() {
		if _, err := Documents(job, result, date); err != nil {
			b.Fatal(err)
		}
	}
}
