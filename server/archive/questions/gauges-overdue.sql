-- Gauges past the day up to which their calibration holds, by the newest day in the archive; and what was read with them past it.
-- The newest day is that of a reading, a step that was done, or a job that was opened: no clock is asked, so the answer hangs on the records alone.
WITH dated AS (
  SELECT readings.taken AS on_day FROM readings WHERE readings.taken IS NOT NULL
  UNION ALL
  SELECT steps.done_on AS on_day FROM steps WHERE steps.done_on IS NOT NULL
  UNION ALL
  SELECT jobs.opened AS on_day FROM jobs WHERE jobs.opened IS NOT NULL
),
newest AS (
  SELECT MAX(dated.on_day) AS on_day FROM dated
),
taken AS (
  SELECT
    readings.gauge AS gauge,
    readings.gauge_record AS gauge_record,
    COALESCE(readings.taken, jobs.opened) AS on_day,
    readings.record AS record
  FROM readings
  JOIN jobs ON jobs.record = readings.record
  WHERE readings.gauge IS NOT NULL
),
late AS (
  SELECT
    gauges.record AS record,
    gauges.gauge AS gauge,
    COUNT(*) AS readings_late,
    COUNT(DISTINCT taken.record) AS records_late,
    MAX(taken.on_day) AS last_late
  FROM gauges
  JOIN taken ON taken.gauge = gauges.gauge AND taken.gauge_record = gauges.record
  WHERE taken.on_day > gauges.due
  GROUP BY gauges.record, gauges.gauge
)
SELECT
  gauges.record AS record,
  gauges.gauge AS gauge,
  gauges.kind AS kind,
  gauges.calibrated AS calibrated,
  gauges.due AS due,
  newest.on_day AS newest_day,
  COALESCE(late.readings_late, 0) AS readings_late,
  COALESCE(late.records_late, 0) AS records_late,
  late.last_late AS last_late
FROM gauges
CROSS JOIN newest
LEFT JOIN late ON late.record = gauges.record AND late.gauge = gauges.gauge
WHERE gauges.due < newest.on_day
ORDER BY record, gauge
