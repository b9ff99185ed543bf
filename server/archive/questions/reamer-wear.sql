-- What each reamer left in the bores that it cut, month by month: a reamer that wears cuts smaller as the months go by.
-- A cut counts where the line that names the reamer has bores that were read as finished. Sizes are at 20 °C; `over` is what the bores are over the
-- reamer as it was read in its crib, and is empty where it was not; `step` is the coarsest of what was read. The day is that of the step that cuts the line, else the day the job was opened.
WITH reamed AS (
  SELECT
    links.record AS record,
    links.entry AS line,
    links.target AS reamer,
    links.target_record AS reamer_record
  FROM links
  WHERE links.fact = 'ream' AND links.target IS NOT NULL
),
cut AS (
  SELECT
    links.record AS record,
    links.target AS line,
    MAX(steps.done_on) AS done_on
  FROM links
  JOIN steps ON steps.record = links.record AND steps.entry = links.entry
  WHERE links.fact = 'cuts'
  GROUP BY links.record, links.target
),
bores AS (
  SELECT
    readings.record AS record,
    readings.entry AS bore,
    AVG(readings.corrected) AS size,
    MAX(readings.step) AS step
  FROM readings
  WHERE readings.fact = 'read' AND readings.stage = 'finished' AND readings.corrected IS NOT NULL
  GROUP BY readings.record, readings.entry
),
reamers AS (
  SELECT
    readings.record AS record,
    readings.entry AS reamer,
    AVG(readings.corrected) AS size
  FROM readings
  WHERE readings.fact = 'read' AND readings.corrected IS NOT NULL
  GROUP BY readings.record, readings.entry
),
named AS (
  SELECT
    links.record AS record,
    links.entry AS line,
    links.target AS bore
  FROM links
  WHERE links.fact = 'bore' AND links.target IS NOT NULL
),
cuts AS (
  SELECT
    reamed.reamer_record AS reamer_record,
    reamed.reamer AS reamer,
    reamed.record AS record,
    COALESCE(EXTRACT(YEAR FROM COALESCE(cut.done_on, jobs.opened)), 0) AS cut_year,
    COALESCE(EXTRACT(MONTH FROM COALESCE(cut.done_on, jobs.opened)), 0) AS cut_month,
    bores.size AS size,
    bores.step AS step
  FROM reamed
  JOIN jobs ON jobs.record = reamed.record
  JOIN named ON named.record = reamed.record AND named.line = reamed.line
  JOIN bores ON bores.record = named.record AND bores.bore = named.bore
  LEFT JOIN cut ON cut.record = reamed.record AND cut.line = reamed.line
)
SELECT
  cuts.reamer_record AS record,
  cuts.reamer AS reamer,
  cuts.cut_year AS cut_year,
  cuts.cut_month AS cut_month,
  COUNT(*) AS bores,
  COUNT(DISTINCT cuts.record) AS jobs,
  MIN(cuts.size) AS least_m,
  AVG(cuts.size) AS mean_m,
  MAX(cuts.size) AS most_m,
  AVG(cuts.size - reamers.size) AS mean_over_m,
  MAX(cuts.step) AS step_m
FROM cuts
LEFT JOIN reamers ON reamers.record = cuts.reamer_record AND reamers.reamer = cuts.reamer
GROUP BY cuts.reamer_record, cuts.reamer, cuts.cut_year, cuts.cut_month
ORDER BY record, reamer, cut_year, cut_month
