package catalog

import (
	"encoding/json"
	"strings"
	"sync"
)

// fabrics are words that a rate card may exclude, by what a fabric's description says. Common practice, no source.
var fabrics = []string{"cotton", "polyester", "nylon", "acrylic", "rayon", "wool", "linen", "spandex", "fleece", "denim", "leather"}

// tagCache remembers lists: a price file has few fabrics on many rows.
var tagCache sync.Map

// TagsOf makes a style's tags, as a JSON list, of its fabric and category: each fibre where it is the only one, else
// "blend" with cotton or polyester left out, and the category.
func TagsOf(fabric, category string) string {
	key := fabric + "\x00" + category
	if v, ok := tagCache.Load(key); ok {
		return v.(string)
	}
	b, _ := json.Marshal(tagsOf(strings.ToLower(fabric), strings.ToLower(category))) // strings always marshal
	if len(key) < 200 {
		tagCache.Store(key, string(b))
	}
	return string(b)
}

func tagsOf(fabric, category string) []string {
	tags := []string{}
	var found []string
	for _, f := range fabrics {
		if strings.Contains(fabric, f) {
			found = append(found, f)
		}
	}
	if len(found) > 1 {
		tags = append(tags, "blend")
	}
	for _, f := range found {
		if len(found) == 1 || f != "cotton" && f != "polyester" {
			tags = append(tags, f)
		}
	}
	for _, c := range []string{category, lastWord(category)} {
		if c != "" && !contains(tags, c) {
			tags = append(tags, c)
		}
	}
	return tags
}

func lastWord(s string) string {
	f := strings.Fields(s)
	if len(f) == 0 {
		return ""
	}
	return f[len(f)-1]
}
