package sagbook.report.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import org.knowm.xchart.VectorGraphicsEncoder;
import org.knowm.xchart.VectorGraphicsEncoder.VectorGraphicsFormat;
import org.knowm.xchart.XYChart;
import org.knowm.xchart.XYChartBuilder;
import org.knowm.xchart.XYSeries;
import org.knowm.xchart.style.Styler;
import org.knowm.xchart.style.XYStyler;
import org.knowm.xchart.style.markers.SeriesMarkers;

/**
 * A plot's lines and marks as XChart draws them, without frame or words: XChart measures words with
 * the fonts of the machine it runs on, which would make the page differ from machine to machine and
 * fail where there is no font.
 */
final class Drawing {
  private static final int MARK_SIZE = 8;

  private Drawing() {}

  /** The frame's inside as an SVG document in UTF-8. */
  static byte[] of(Plot plot, int width, int height) {
    XYChart chart = new XYChartBuilder().width(width).height(height).build();
    bare(chart.getStyler());
    chart.getStyler().setXAxisMin(plot.x().low()).setXAxisMax(plot.x().high());
    chart.getStyler().setYAxisMin(plot.y().low()).setYAxisMax(plot.y().high());
    for (int i = 0; i < plot.series().size(); i++) {
      add(chart, plot.series().get(i), i);
    }
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try {
      VectorGraphicsEncoder.saveVectorGraphic(chart, out, VectorGraphicsFormat.SVG);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toByteArray();
  }

  /**
   * The colour in which a series is drawn. It never reaches the page: it is how a shape in the
   * drawing tells which series it belongs to.
   */
  static Color color(int series) {
    return new Color(series);
  }

  private static void add(XYChart chart, Plot.Series series, int index) {
    XYSeries drawn = chart.addSeries(Integer.toString(index), series.x(), series.y());
    switch (series.ink().role()) {
      case MARK, OTHER_MARK -> {
        drawn.setXYSeriesRenderStyle(XYSeries.XYSeriesRenderStyle.Scatter);
        drawn.setMarker(
            switch (series.ink().pick()) {
              case 1 -> SeriesMarkers.DIAMOND;
              case 2 -> SeriesMarkers.SQUARE;
              case 3 -> SeriesMarkers.TRIANGLE_UP;
              case 4 -> SeriesMarkers.TRIANGLE_DOWN;
              default -> SeriesMarkers.CIRCLE;
            });
        drawn.setMarkerColor(color(index));
      }
      case CURVE, TRACE, DAY, SPAN, BAR, RULE -> {
        drawn.setMarker(SeriesMarkers.NONE);
        drawn.setLineColor(color(index));
        drawn.setLineStyle(new BasicStroke(1));
      }
    }
  }

  private static void bare(XYStyler styler) {
    styler.setMarkerSize(MARK_SIZE);
    styler.setChartPadding(0).setPlotContentSize(1).setLegendVisible(false);
    styler.setChartTitleVisible(false);
    styler.setPlotMargin(0);
    styler.setAxisTicksVisible(false).setAxisTitlesVisible(false);
    styler.setPlotGridLinesVisible(false).setPlotTicksMarksVisible(false);
    styler.setPlotBorderVisible(false);
    withoutMeasuringWords(styler);
  }

  /** With no room for a tick, XChart computes none and asks for no font. */
  private static void withoutMeasuringWords(XYStyler styler) {
    styler.setXAxisTickMarkSpacingHint(Integer.MAX_VALUE);
    styler.setYAxisTickMarkSpacingHint(Integer.MAX_VALUE);
    styler.setYAxisGroupPosition(0, Styler.YAxisPosition.Left);
  }
}
