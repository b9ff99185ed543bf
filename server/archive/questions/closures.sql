-- How much each bush closed when it was pressed in, beside what was foretold.
-- The bush's bore as bought less the same bore read as pressed, both as the mean of their readings at 20 °C; presses without both are left out.
-- `step` is the coarser of the two.
WITH presses AS (
  SELECT entries.record AS record, entries.entry AS press
  FROM entries
  WHERE entries.kind = 'press' AND entries.counts
),
bushes AS (
  SELECT entries.record AS record, entries.entry AS bush, entries.lot AS lot
  FROM entries
  WHERE entries.kind = 'bush' AND entries.counts
),
bores AS (
  SELECT entries.record AS record, entries.entry AS bore
  FROM entries
  WHERE entries.kind = 'bore' AND entries.counts
),
placed AS (
  SELECT
    links.record AS record,
    links.entry AS press,
    links.target AS bush,
    bushes.lot AS lot
  FROM links
  JOIN presses ON presses.record = links.record AND presses.press = links.entry
  JOIN bushes ON bushes.record = links.record AND bushes.bush = links.target
  WHERE links.fact = 'on'
),
bored AS (
  SELECT
    links.record AS record,
    links.entry AS bore,
    links.target AS bush
  FROM links
  JOIN bores ON bores.record = links.record AND bores.bore = links.entry
  WHERE links.fact = 'on'
),
bought AS (
  SELECT
    readings.record AS record,
    readings.entry AS bush,
    AVG(readings.corrected) AS size,
    MAX(readings.step) AS step
  FROM readings
  WHERE readings.side = 'id' AND readings.stage = 'bought' AND readings.corrected IS NOT NULL
  GROUP BY readings.record, readings.entry
),
pressed AS (
  SELECT
    readings.record AS record,
    readings.entry AS bore,
    AVG(readings.corrected) AS size,
    MAX(readings.step) AS step
  FROM readings
  WHERE readings.fact = 'read' AND readings.stage = 'pressed' AND readings.corrected IS NOT NULL
  GROUP BY readings.record, readings.entry
),
made_of AS (
  SELECT
    links.record AS record,
    links.entry AS bush,
    links.target AS material
  FROM links
  WHERE links.fact = 'material'
),
tight AS (
  SELECT results.record AS record, results.entry AS press, results.nominal AS size
  FROM results
  WHERE results.kind = 'interference'
),
foretold AS (
  SELECT results.record AS record, results.entry AS press, results.low AS low, results.high AS high
  FROM results
  WHERE results.kind = 'bore-closure'
)
SELECT
  placed.record AS record,
  jobs.opened AS opened,
  placed.press AS press,
  made_of.material AS material,
  placed.lot AS lot,
  tight.size AS interference_m,
  foretold.low AS foretold_least_m,
  foretold.high AS foretold_most_m,
  bought.size - pressed.size AS closed_m,
  CASE WHEN bought.step < pressed.step THEN pressed.step ELSE bought.step END AS step_m
FROM placed
JOIN jobs ON jobs.record = placed.record
JOIN bored ON bored.record = placed.record AND bored.bush = placed.bush
JOIN bought ON bought.record = placed.record AND bought.bush = placed.bush
JOIN pressed ON pressed.record = placed.record AND pressed.bore = bored.bore
LEFT JOIN made_of ON made_of.record = placed.record AND made_of.bush = placed.bush
LEFT JOIN tight ON tight.record = placed.record AND tight.press = placed.press
LEFT JOIN foretold ON foretold.record = placed.record AND foretold.press = placed.press
ORDER BY record, press
