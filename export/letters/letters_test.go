package letters

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestSet_plainTextIsOneRunAndFiguresAreTabular(t *testing.T) {
	for _, w := range []Weight{Regular, Medium, Semibold} {
		line := Set("Ærøskøbing Rowing 1,261.38 – Łódź × ½ €", w, 10)
		if len(line.Runs) != 1 || line.Runs[0].Outline != nil {
			t.Errorf("%v: got %d runs, want one run of text", w, len(line.Runs))
		}
		one := Width("1", w, 10)
		for _, d := range "0234567890" {
			if got := Width(string(d), w, 10); got != one {
				t.Errorf("%v: figure %c is %.3f wide, want %.3f like every figure", w, d, got, one)
			}
		}
	}
}

func TestSet_namesInManyScriptsAreDrawnWithoutLoss(t *testing.T) {
	names := map[string]string{
		"Arabic": "نادي المرفأ للتجديف", "Hebrew": "מועדון החתירה", "Devanagari": "श्री नौका क्लब", "Bengali": "নৌকা ক্লাব",
		"Tamil": "படகு சங்கம்", "Thai": "สโมสรเรือพาย", "Chinese": "港湾划船俱乐部", "Japanese": "港ボートクラブ", "Korean": "항구 조정 클럽",
		"Greek": "Ναυτικός Όμιλος", "Cyrillic": "Гребний клуб Їжак", "Georgian": "ნიჩბოსნობის კლუბი", "Armenian": "Թիավարության ակումբ",
		"Amharic": "የመርከብ ክለብ", "Vietnamese": "Câu lạc bộ chèo thuyền Ngữ", "Khmer": "ក្លឹបអុំទូក", "Burmese": "လှေလှော်အသင်း",
	}
	for script, name := range names {
		line := Set(name, Regular, 10)
		if line.Width < 10 {
			t.Errorf("%s %q: got width %.1f, want a drawn line", script, name, line.Width)
		}
		got := ""
		for _, r := range line.Runs {
			got += r.Text
			if r.Outline != nil && len(r.Outline) == 0 && strings.TrimSpace(r.Text) != "" {
				t.Errorf("%s %q: run %q draws nothing", script, name, r.Text)
			}
		}
		if len(got) != len(Clean(name)) || strings.Contains(got, "U+") {
			t.Errorf("%s: got the text %q, want all of %q", script, got, name)
		}
	}
}

func TestSet_arabicLettersJoin(t *testing.T) {
	joined := Width("بب", Regular, 100)
	apart := 2 * Width("ب", Regular, 100)
	if joined >= apart {
		t.Errorf("two joined letters are %.1f wide, want less than twice one alone, %.1f", joined, apart)
	}
}

func TestSet_orderFollowsTheReadingDirection(t *testing.T) {
	cases := []struct{ in, want string }{
		{"abc אבג def", "abc |אבג| def"},
		{"אבג 24", "24|אבג "},
		{"Club אבג 24", "Club |24|אבג "},
		{"אבג abc", "abc|אבג "},
	}
	for _, c := range cases {
		var got []string
		for _, r := range Set(c.in, Regular, 10).Runs {
			got = append(got, r.Text)
		}
		if s := strings.Join(got, "|"); s != c.want {
			t.Errorf("%q: got %q from left to right, want %q", c.in, s, c.want)
		}
	}
}

func TestClean_controlsGoAndTheUnknownIsNamed(t *testing.T) {
	got := Clean("a\u202eb\x00c\nd \U0010FFFD e\u0301")
	if want := "abc d [U+10FFFD] é"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

func TestWrap_everyLineFitsAndNothingIsLost(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.StringOfN(rapid.RuneFrom([]rune("abcW 12.אبञ漢\n")), 0, 80, -1).Draw(t, "text")
		width := rapid.Float64Range(30, 200).Draw(t, "width")
		lines := Wrap(s, Regular, 10, width)
		for _, l := range lines {
			if got := Width(l, Regular, 10); got > width+1e-9 {
				t.Fatalf("%q in %.1f: line %q is %.1f wide", s, width, l, got)
			}
		}
		squeeze := func(s string) string { return strings.Join(strings.Fields(s), "") }
		if got, want := squeeze(strings.Join(lines, "")), squeeze(Clean(s)); got != want {
			t.Fatalf("got %q, want %q", got, want)
		}
	})
}

func TestClip_endsWithAnEllipsisInsideTheWidth(t *testing.T) {
	got := Clip("The Old Harbour Masters' Rowing and Sailing Association", Regular, 10, 100)
	if w := Width(got, Regular, 10); w > 100 || !strings.HasSuffix(got, "…") || math.Abs(w-100) > 15 {
		t.Errorf("got %q, %.1f wide, want nearly 100 with an ellipsis", got, w)
	}
}
