-- Days of production and rush tiers of a card's supplier, as JSON; a supplier's least order; where a style can be printed by size, as
-- JSON; seconds of handling by category, as JSON.
ALTER TABLE rate_card ADD COLUMN terms TEXT NOT NULL DEFAULT '{}' CHECK (json_valid(terms));
ALTER TABLE supplier ADD COLUMN minimum_order TEXT NOT NULL DEFAULT '0';
ALTER TABLE style ADD COLUMN printable TEXT NOT NULL DEFAULT '[]' CHECK (json_valid(printable));
ALTER TABLE shop ADD COLUMN handling TEXT NOT NULL DEFAULT '{}' CHECK (json_valid(handling));
