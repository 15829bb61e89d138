package quote_test

import (
	"errors"
	"os"
	"path/filepath"
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"pressworth/quote"
	"pressworth/quote/jobfile"
	"pressworth/quote/money"
)

// FuzzPrice: no file makes the engine panic or hang, and whatever is wrong comes as problems with a path.
func FuzzPrice(f *testing.F) {
	for _, dir := range []string{"jobs", "bad"} {
		files, _ := filepath.Glob("../testdata/" + dir + "/*.json")
		if len(files) == 0 {
			f.Fatal("no files in testdata/" + dir)
		}
		for _, name := range files {
			data, err := os.ReadFile(name)
			if err != nil {
				f.Fatal(err)
			}
			f.Add(data)
		}
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		if len(data) > 1<<16 {
			t.Skip("longer than a case needs to be")
		}
		_, _, err := jobfile.Price(data)
		orderly(t, err)
	})
}

// orderly fails for an error that is not a list of problems with reasons.
func orderly(t testing.TB, err error) {
	var problems quote.Problems
	if err == nil {
		return
	}
	if !errors.As(err, &problems) || len(problems) == 0 {
		t.Fatalf("the error is not a list of problems: %v", err)
	}
	for _, p := range problems {
		if p.Problem == "" {
			t.Fatalf("%q: no reason given", p.Path)
		}
	}
}

// Values that a careless or hostile file might hold, in every field of a job that was right.
func TestPrice_anyValueIsAnswered(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := drawJob(t)
		for range rapid.IntRange(1, 4).Draw(t, "spoilt fields") {
			spoil(t, reflect.ValueOf(&job).Elem())
		}
		r, err := quote.Price(job)
		var problems quote.Problems
		if err != nil && !errors.As(err, &problems) {
			t.Fatalf("the error is not a list of problems: %v", err)
		}
		if err == nil && r.Pieces < 1 {
			t.Fatalf("a result without pieces")
		}
	})
}

// spoil puts a strange value somewhere into v.
func spoil(t *rapid.T, v reflect.Value) {
	switch v.Interface().(type) {
	case money.Amount:
		v.Set(reflect.ValueOf(usd(strange(t))))
		return
	case money.Number:
		v.Set(reflect.ValueOf(num(strange(t))))
		return
	}
	switch v.Kind() {
	case reflect.Pointer:
		if v.IsNil() {
			v.Set(reflect.New(v.Type().Elem()))
		}
		spoil(t, v.Elem())
	case reflect.Struct:
		spoil(t, v.Field(rapid.IntRange(0, v.NumField()-1).Draw(t, "field")))
	case reflect.Slice:
		spoilList(t, v)
	case reflect.String:
		v.SetString(rapid.SampledFrom([]string{"", "g0", "p0", "auto", "c9", "\x00", "ſ", "99999999999999999999"}).Draw(t, "text"))
	case reflect.Int:
		v.SetInt(rapid.SampledFrom([]int64{0, -1, 1, 3, 99_999, 100_001, 1_000_000_000, -1_000_000_000}).Draw(t, "count"))
	case reflect.Bool:
		v.SetBool(!v.Bool())
	}
}

func spoilList(t *rapid.T, v reflect.Value) {
	switch n := v.Len(); {
	case n == 0 || rapid.IntRange(1, 6).Draw(t, "grow") == 1:
		v.Set(reflect.Append(v, reflect.Zero(v.Type().Elem())))
	case rapid.IntRange(1, 6).Draw(t, "twice") == 1:
		v.Set(reflect.Append(v, v.Index(0)))
	default:
		spoil(t, v.Index(rapid.IntRange(0, n-1).Draw(t, "at")))
	}
}

func strange(t *rapid.T) string {
	return rapid.SampledFrom([]string{
		"0", "-1", "0.00000001", "999999999999.99999999", "-999999999999", "100", "99.99999999", "0.005",
		"123456789012", "3.14159265", "1",
	}).Draw(t, "number")
}
